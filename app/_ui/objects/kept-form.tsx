"use client";

import { useTranslations } from "next-intl";
import { type FormEvent, type ReactNode, useEffect, useRef, useState } from "react";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { keepTyped, putTypedBack } from "./kept-typed.ts";
import { senderOf } from "./outbox-sender.ts";

type KeptFormProps = {
  readonly file: string;
  readonly action: string;
  /** Sets it apart from the file's other forms, the same whenever its page is opened. */
  readonly name: string;
  /** What it is about, for the person who waits for it to be sent. */
  readonly about: string;
  /** The page that shows it done. */
  readonly done: string;
  /** The server gave back what was typed: it is newer than what this browser kept. */
  readonly given: boolean;
  readonly className?: string | undefined;
  readonly children: ReactNode;
};

/**
 * A plain form that loses nothing: what is typed is kept in this browser until it has arrived, and what was sent while
 * there was no connection, photographs included, waits here and is sent again. Without scripts it is a plain form.
 */
export function KeptForm({ file, action, name, about, done, given, className, children }: KeptFormProps) {
  const t = useTranslations("objectPages.outbox");
  const form = useRef<HTMLFormElement>(null);
  const plainly = useRef(false);
  const [state, setState] = useState<"still" | "sending" | "kept" | "signed out">("still");
  const [restored, setRestored] = useState(false);

  // Once for each form: it fills fields that React does not control.
  useEffect(() => {
    if (form.current && !given) setRestored(putTypedBack(file, name, form.current));
  }, [file, name, given]);

  async function submit(event: FormEvent<HTMLFormElement>) {
    if (plainly.current || !form.current) return;
    event.preventDefault();
    const submitter = (event.nativeEvent as SubmitEvent).submitter;
    const parts = [...new FormData(form.current, submitter).entries()];
    const item = parts.find(([name]) => name === "id")?.[1] ?? "";
    setState("sending");
    const key = `${file} ${action} ${String(item)}`;
    const outcome = await senderOf(file).post({ key, at: Date.now(), file, action, name, about, parts });
    if (outcome?.is === "done") {
      // Fetched anew, whatever the browser holds of that page from before.
      window.location.assign(done);
    } else if (outcome === null || outcome.is === "refused") {
      // The host says at each field what is wrong, by the page that it answers with.
      plainly.current = true;
      form.current.requestSubmit(submitter);
    } else setState(outcome.is === "signed out" ? "signed out" : "kept");
  }

  return (
    <form
      ref={form}
      method="post"
      action={action}
      encType="multipart/form-data"
      className={className ?? forms.form}
      onSubmit={submit}
      onInput={(event) => keepTyped(file, name, event.currentTarget)}
    >
      {children}
      <p role="status" className={plain.note}>
        {state === "sending" && t("sending")}
        {state === "kept" && t("kept")}
        {state === "signed out" && t("signedOut")}
        {state === "still" && restored && t("restored")}
      </p>
    </form>
  );
}
