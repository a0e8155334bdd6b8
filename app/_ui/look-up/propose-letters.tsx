"use client";

import { useTranslations } from "next-intl";
import { useEffect, useRef, useState } from "react";
import type { FieldError } from "#core/field-error";
import type { LettersProposal } from "#core/reading/propose-letters";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import { askForLetters } from "./ask-for-letters.ts";
import styles from "./propose-letters.module.css";

type ProposeLettersProps = {
  /** The photograph and the region as a look-up would send them; null while there is none. */
  readonly photograph: () => FormData | null;
  /** Takes letters over into the field. */
  readonly onTake: (letters: string) => void;
};

type State =
  | { readonly now: "idle" }
  | { readonly now: "reading" }
  | { readonly now: "refused"; readonly error: FieldError }
  | { readonly now: "read"; readonly proposals: readonly LettersProposal[] };

/** Has the marked part of the photograph read by machine, when asked to, and offers what was read. */
export function ProposeLetters({ photograph, onTake }: ProposeLettersProps) {
  const t = useTranslations("known.propose");
  const [state, setState] = useState<State>({ now: "idle" });
  const running = useRef<AbortController | null>(null);
  // Only where scripts run: without them the button could do nothing.
  const [usable, setUsable] = useState(false);
  useEffect(() => {
    setUsable(true);
    return () => running.current?.abort();
  }, []);
  if (!usable) return null;

  async function ask() {
    const form = photograph();
    if (!form || state.now === "reading") return;
    const controller = new AbortController();
    running.current = controller;
    setState({ now: "reading" });
    const answer = await askForLetters(form, controller.signal);
    if (!controller.signal.aborted)
      setState("error" in answer ? { now: "refused", ...answer } : { now: "read", ...answer });
  }

  const proposals = state.now === "read" ? state.proposals : [];
  return (
    <div className={styles.propose}>
      <button type="button" className={plain.quiet} onClick={ask} aria-disabled={state.now === "reading"}>
        {state.now === "reading" ? t("reading") : t("ask")}
      </button>
      <div role="status" className={styles.said}>
        {state.now === "reading" && <span className={plain.hidden}>{t("reading")}</span>}
        {state.now === "read" && <p className={plain.note}>{t("found", { count: proposals.length })}</p>}
      </div>
      {state.now === "refused" && <FieldErrorNote error={state.error} />}
      {proposals.length > 0 && (
        <ul className={styles.proposals}>
          {proposals.map(({ letters, along, clear, doubtful }) => (
            <li key={`${along} ${letters}`}>
              <button type="button" className={styles.take} onClick={() => onTake(letters)}>
                <span className={plain.hidden}>{t("take")} </span>
                <bdi className={styles.letters}>{letters}</bdi>
              </button>
              <span className={plain.note}>
                {t("how", { along, sure: clear ? "clear" : "doubtful", doubtful })}
              </span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
