"use client";

import { type FormEvent, type ReactNode, useEffect, useRef, useState } from "react";
import plain from "../plain.module.css";
import styles from "./review.module.css";

type HeldFormProps = {
  readonly action: string;
  readonly className: string | undefined;
  readonly words: { readonly held: string; readonly undo: string; readonly now: string };
  readonly children: ReactNode;
};

const SECONDS = 60;

/**
 * A form that is held back for a minute after it was sent, in which it can be undone. Whoever leaves the page sends
 * it: what was decided is not lost. Without scripts it is sent at once.
 */
export function HeldForm({ action, className, words, children }: HeldFormProps) {
  const form = useRef<HTMLFormElement>(null);
  const kept = useRef<FormData | null>(null);
  const [left, setLeft] = useState<number | null>(null);

  const send = () => {
    if (kept.current === null) return;
    kept.current = null;
    form.current?.submit();
  };
  const hold = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    kept.current = new FormData(event.currentTarget);
    setLeft(SECONDS);
  };
  const undo = () => {
    kept.current = null;
    setLeft(null);
    form.current?.querySelector("textarea")?.focus();
  };

  useEffect(() => {
    if (left === null) return;
    if (left === 0) return send();
    const tick = setTimeout(() => setLeft(left - 1), 1000);
    return () => clearTimeout(tick);
  }, [left]);

  useEffect(() => {
    const leave = () => {
      const data = kept.current;
      kept.current = null;
      if (data) void fetch(action, { method: "POST", body: data, keepalive: true });
    };
    addEventListener("pagehide", leave);
    return () => {
      removeEventListener("pagehide", leave);
      leave();
    };
  }, [action]);

  return (
    <form ref={form} method="post" action={action} className={className} onSubmit={hold}>
      <div className={styles.heldFields} inert={left !== null}>
        {children}
      </div>
      {left !== null && (
        <div className={styles.held}>
          <p role="status">{words.held}</p>
          <p className={styles.seconds} aria-hidden="true">
            {left}
          </p>
          <button type="button" className={plain.button} onClick={undo}>
            {words.undo}
          </button>
          <button type="button" className={plain.quiet} onClick={send}>
            {words.now}
          </button>
        </div>
      )}
    </form>
  );
}
