"use client";

import { useRouter } from "next/navigation";
import { useTranslations } from "next-intl";
import { type FormEvent, type MouseEvent, useEffect, useRef, useState } from "react";
import type { FieldError } from "#core/field-error";
import { checkObserved } from "#core/object-files/check-observed";
import type { Observed } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import { type FormState, OtherErrors } from "../questions/form-field.tsx";
import type { ExamPoint } from "./exam-point.ts";
import { keepTyped, putTypedBack } from "./kept-typed.ts";
import { newId } from "./new-id.ts";
import styles from "./objects.module.css";
import { senderOf } from "./outbox-sender.ts";
import { PointFields } from "./point-fields.tsx";
import { PointList } from "./point-list.tsx";

type ExaminationProps = {
  readonly file: string;
  readonly version: number;
  readonly points: readonly ExamPoint[];
  /** Place of the point to begin with. */
  readonly first: number;
  readonly photographId: string;
  readonly form: FormState | null;
};

/**
 * The guided examination: one point at a time, what to press under the thumb. What is answered goes on its way, or
 * waits here for a connection, while the next point is looked at. Without scripts each point is a page with a plain
 * form.
 */
export function Examination({ file, version, points, first, photographId, form }: ExaminationProps) {
  const t = useTranslations("objectPages.examine");
  const router = useRouter();
  const [place, setPlace] = useState(first);
  const [said, setSaid] = useState<Readonly<Record<string, Observed>>>({});
  const [photograph, setPhotograph] = useState(photographId);
  const [plainly, setPlainly] = useState(false);
  const [wrong, setWrong] = useState<FieldError | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const node = useRef<HTMLFormElement>(null);
  const point = points[place];
  const pointId = point?.id;
  const given = form !== null && form.typed.point === pointId;

  useEffect(() => {
    if (node.current && pointId && !given) putTypedBack(file, `observation ${pointId}`, node.current);
  }, [file, pointId, given]);

  if (!point) return <p>{t("noPoints")}</p>;
  const page = (of: number) => `/objects/${file}/examine?point=${points[of]?.id ?? point.id}`;
  const next = Math.min(place + 1, points.length - 1);

  function go(to: number, event?: MouseEvent) {
    event?.preventDefault();
    setPlace(to);
    setWrong(null);
    history.replaceState(null, "", page(to));
    heading.current?.focus();
  }

  async function submit(event: FormEvent<HTMLFormElement>) {
    if (plainly || !point) return;
    event.preventDefault();
    const target = event.currentTarget;
    const parts = [...new FormData(target).entries()];
    const error = checkAnswer(parts);
    setWrong(error);
    if (error) {
      // The photograph is in the form alone: who left now and was refused later would have lost it.
      target.querySelector<HTMLElement>('[name="value"]')?.focus();
      return;
    }
    const isPhotographed = parts.some(([, value]) => typeof value !== "string" && value.size > 0);
    const key = `${file} observation ${point.item} ${isPhotographed ? photograph : ""}`;
    const action = `/api/objects/${file}/observation`;
    const name = `observation ${point.id}`;
    const pending = { key, at: Date.now(), file, action, name, about: point.lookFor, parts };
    if (!(await senderOf(file).leave(pending))) {
      setPlainly(true);
      target.requestSubmit();
      return;
    }
    const observed = parts.find(([part]) => part === "observed")?.[1] as Observed;
    setSaid({ ...said, [point.id]: observed });
    setPhotograph(newId());
    if (place < points.length - 1) go(next);
    else router.refresh();
  }

  return (
    <>
      <form
        key={point.id}
        ref={node}
        method="post"
        action={`/api/objects/${file}/observation`}
        encType="multipart/form-data"
        className={styles.point}
        id="point"
        onSubmit={submit}
        onInput={(event) => {
          keepTyped(file, `observation ${point.id}`, event.currentTarget);
          if (wrong) setWrong(checkAnswer([...new FormData(event.currentTarget).entries()]));
        }}
      >
        <h2 ref={heading} tabIndex={-1}>
          <span className={plain.note}>{t("place", { place: place + 1, of: points.length })}</span>
          <br />
          {point.lookFor}
        </h2>
        {given && <OtherErrors form={form} shown={["value"]} />}
        <p>{point.why}</p>
        {point.source && <p className={plain.note}>{t("source", { source: point.source })}</p>}
        {Object.entries({
          id: point.item,
          point: point.id,
          version: String(version),
          page: page(place),
          done: page(next),
          photographId: photograph,
        }).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <PointFields
          point={point}
          typed={given ? form.typed : null}
          said={said[point.id] ?? null}
          wrong={wrong ?? (given ? (form.errors.find(({ field }) => field === "value") ?? null) : null)}
        />
        <div className={styles.steps}>
          <a
            href={page(Math.max(0, place - 1))}
            className={plain.quiet}
            aria-disabled={place === 0 || undefined}
            onClick={(event) => go(Math.max(0, place - 1), event)}
          >
            {t("previous")}
          </a>
          <button type="submit" className={plain.button}>
            {t(place < points.length - 1 ? "saveNext" : "saveLast")}
          </button>
        </div>
      </form>
      <PointList points={points} said={said} place={place} pageOf={page} onGo={go} />
    </>
  );
}

/** What the host would refuse in the answer at a point. */
function checkAnswer(parts: readonly (readonly [string, FormDataEntryValue])[]): FieldError | null {
  const text = (name: string) => {
    const value = parts.find(([part]) => part === name)?.[1];
    return typeof value === "string" ? value.trim() : "";
  };
  return checkObserved({
    observed: text("observed") as Observed,
    option: text("option"),
    value: text("value"),
  });
}
