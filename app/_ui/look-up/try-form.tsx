"use client";

import { type FormEvent, type ReactNode, useState } from "react";
import { FieldErrorNote } from "../field-error.tsx";
import { Progress } from "./progress.tsx";
import { useLookUp } from "./use-look-up.ts";

type TryFormProps = {
  readonly className: string | undefined;
  readonly label: string;
  readonly children: ReactNode;
};

/** A plain form around the strip; with scripts the answer's stages are told while one waits. */
export function TryForm({ className, label, children }: TryFormProps) {
  const lookUp = useLookUp();
  const [name, setName] = useState("");

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const button = (event.nativeEvent as SubmitEvent).submitter;
    if (!(button instanceof HTMLButtonElement) || lookUp.state.now === "running") return;
    const form = new FormData();
    form.set("try", button.value);
    setName(button.textContent ?? "");
    lookUp.send(form);
  }

  return (
    <form action="/api/look-ups" method="post" encType="multipart/form-data" onSubmit={submit}>
      {lookUp.state.now === "running" && <Progress state={lookUp.state} of={name} onCancel={lookUp.cancel} />}
      {lookUp.state.now === "refused" && <FieldErrorNote error={lookUp.state.error} />}
      <ul className={className} aria-label={label}>
        {children}
      </ul>
    </form>
  );
}
