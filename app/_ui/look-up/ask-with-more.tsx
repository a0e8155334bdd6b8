"use client";

import { useTranslations } from "next-intl";
import type { FormEvent } from "react";
import type { FieldError } from "#core/field-error";
import type { AskedPhotograph } from "#core/look-ups/asked-photographs";
import type { TypedKnowledge } from "#core/look-ups/knowledge";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import { rounded } from "./crop-geometry.ts";
import styles from "./known.module.css";
import { Known } from "./known.tsx";
import { isAboutKnown } from "./known-in.ts";
import { PhotographsAgain } from "./photographs-again.tsx";
import { Progress } from "./progress.tsx";
import { useLookUp } from "./use-look-up.ts";

type AskWithMoreProps = {
  readonly lookUp: string;
  readonly photographs: readonly AskedPhotograph[];
  readonly typed: TypedKnowledge;
  /** What was wrong when the plain form was sent. */
  readonly error: FieldError | null;
  readonly materials: readonly string[];
};

/** Asks again with the photographs that are here already, and with more, or something else, known. A plain form. */
export function AskWithMore({ lookUp: id, photographs, typed, error, materials }: AskWithMoreProps) {
  const t = useTranslations("known");
  const lookUp = useLookUp();
  const running = lookUp.state.now === "running";
  const wrong = lookUp.state.now === "refused" ? lookUp.state.error : error;

  function photograph() {
    const [first] = photographs;
    if (!first) return null;
    const form = new FormData();
    form.set("again", first.sha256);
    for (const [name, value] of Object.entries(rounded(first.region))) form.set(name, String(value));
    return form;
  }

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (!running) lookUp.send(new FormData(event.currentTarget));
  }

  return (
    <form
      action="/api/look-ups"
      method="post"
      encType="multipart/form-data"
      className={styles.ask}
      onSubmit={submit}
    >
      <input type="hidden" name="from" value={id} />
      <PhotographsAgain photographs={photographs} />
      {wrong && !isAboutKnown(wrong) && <FieldErrorNote error={wrong} />}
      {lookUp.state.now === "running" && <Progress state={lookUp.state} onCancel={lookUp.cancel} />}
      <div hidden={running}>
        <Known folded typed={typed} error={wrong} materials={materials} photograph={photograph}>
          <button type="submit" className={plain.button}>
            {t("askAgain")}
          </button>
        </Known>
      </div>
    </form>
  );
}
