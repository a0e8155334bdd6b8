"use client";

import { useEffect, useState } from "react";
import styles from "./review.module.css";

const CHOSEN_BY: Readonly<Record<string, string>> = { s: "support", o: "oppose", a: "abstain" };
const LED_BY: Readonly<Record<string, string>> = { j: "next", k: "prev" };
const KEPT_AS = "countermark-review-keys";

/** Single keys for what a reviewer does again and again, with a switch that is remembered on this device. */
export function ReviewKeys({ words }: { readonly words: { readonly use: string; readonly keys: string } }) {
  const [on, setOn] = useState<boolean | null>(null);
  useEffect(() => setOn(localStorage.getItem(KEPT_AS) !== "off"), []);
  useEffect(() => {
    if (!on) return;
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [on]);
  if (on === null) return null;
  return (
    <div className={styles.keys}>
      <label>
        <input
          type="checkbox"
          checked={on}
          onChange={({ target }) => {
            localStorage.setItem(KEPT_AS, target.checked ? "on" : "off");
            setOn(target.checked);
          }}
        />
        {words.use}
      </label>
      {on && <p>{words.keys}</p>}
    </div>
  );
}

function press(event: KeyboardEvent): void {
  if (event.ctrlKey || event.metaKey || event.altKey || isWriting(event.target)) return;
  const choice = CHOSEN_BY[event.key];
  const radio = choice && document.querySelector<HTMLInputElement>(`input[name="choice"][value="${choice}"]`);
  if (radio && !radio.closest("[inert]")) {
    radio.checked = true;
    radio.focus();
    event.preventDefault();
  }
  const rel = LED_BY[event.key];
  const link = rel && document.querySelector<HTMLAnchorElement>(`a[rel="${rel}"]`);
  if (link) link.click();
}

/** A key pressed in a field belongs to the field; a radio button takes letters for nothing. */
function isWriting(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const radio = target instanceof HTMLInputElement && target.type === "radio";
  return !radio && target.matches("input, textarea, select, [contenteditable]");
}
