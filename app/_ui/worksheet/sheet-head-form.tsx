import { useTranslations } from "next-intl";
import { type SubmitEvent, useRef } from "react";
import type { WorksheetState } from "#core/dating/answer-worksheet-form";
import type { AddressParams } from "#core/dating/read-worksheet";
import plain from "../plain.module.css";
import form from "../questions/form.module.css";
import { LineField, OtherErrors } from "../questions/form-field.tsx";
import { CarriedSheet } from "./evidence-form.tsx";
import styles from "./worksheet.module.css";

type SheetHeadFormProps = {
  readonly state: WorksheetState;
  readonly onTake: (params: AddressParams) => void;
};

/** What the object is, and the years that are considered at all. */
export function SheetHeadForm({ state, onTake }: SheetHeadFormProps) {
  const t = useTranslations("worksheet");
  const element = useRef<HTMLFormElement>(null);
  const { worksheet, errors } = state;
  const wrong = errors.find(({ field }) => field === "years");
  const [from, to] = wrong ? wrong.received.split("/") : [worksheet.years?.from, worksheet.years?.to];
  const typed = { t: worksheet.title, from: String(from ?? ""), to: String(to ?? "") };
  const fields = { typed, errors: wrong ? [wrong] : [] };
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    onTake(Object.fromEntries(new FormData(element.current ?? undefined)) as AddressParams);
  };
  return (
    <details className={styles.sheetHead} open={wrong !== undefined}>
      <summary>{t("object")}</summary>
      <form action="/dates" ref={element} onSubmit={submit} className={form.form}>
        <CarriedSheet worksheet={worksheet} head={false} />
        <input type="hidden" name="act" value="head" />
        <LineField form={fields} name="t" label={t("objectTitle")} optional />
        <fieldset className={form.group}>
          <legend>{t("years")}</legend>
          <OtherErrors form={fields} shown={[]} />
          <div className={form.pair}>
            <LineField form={fields} name="from" label={t("from")} optional />
            <LineField form={fields} name="to" label={t("to")} optional />
          </div>
          <p className={plain.note}>{t("yearsNote")}</p>
        </fieldset>
        <button type="submit" className={plain.quiet}>
          {t("keepHead")}
        </button>
      </form>
    </details>
  );
}
