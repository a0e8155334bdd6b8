import { useTranslations } from "next-intl";
import { addressOf, type Worksheet, worksheetQuery } from "#core/dating/worksheet";
import type { FieldError } from "#core/field-error";
import type { FileLine } from "#core/object-files/kept-file";
import { FAMILIES } from "#core/object-files/vocabulary";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField, OtherErrors } from "../questions/form-field.tsx";
import { wordPiece } from "../worksheet/piece-words.ts";
import styles from "./objects.module.css";

type TakeWorksheetProps = {
  readonly worksheet: Worksheet;
  /** What of its address can't be read. */
  readonly unreadable: readonly FieldError[];
  /** Those that the member may change. */
  readonly files: readonly FileLine[];
  readonly form: FormState;
  /** An id for each piece. */
  readonly ids: readonly string[];
};

/** The step from a worksheet to an object file: what is taken, and into which. */
export function TakeWorksheet({ worksheet, unreadable, files, form, ids }: TakeWorksheetProps) {
  const t = useTranslations("objectPages.take");
  const isEmpty = worksheet.pieces.length === 0;
  return (
    <article>
      <header className={styles.head}>
        <p className={plain.note}>
          <a href={isEmpty ? "/dates" : addressOf(worksheet)}>{t("back")}</a>
        </p>
        <h1>{t("title")}</h1>
        <p className={plain.lede}>{isEmpty ? t("empty") : t("lede")}</p>
      </header>
      <div className={styles.body}>
        {unreadable.map((error) => (
          <FieldErrorNote key={`${error.rule} ${error.received}`} error={error} />
        ))}
        {!isEmpty && (
          <div className={styles.two}>
            <TakeForm worksheet={worksheet} files={files} form={form} ids={ids} />
            <PiecesTaken worksheet={worksheet} />
          </div>
        )}
      </div>
    </article>
  );
}

const SHOWN = ["into", "title", "family"];

function TakeForm({ worksheet, files, form, ids }: Omit<TakeWorksheetProps, "unreadable">) {
  const t = useTranslations("objectPages.take");
  const words = useTranslations("objectPages");
  const named = files.filter(({ title }) => title === worksheet.title);
  const into = named.length === 1 ? (named[0]?.id ?? "new") : "new";
  const state = { ...form, typed: { into, title: worksheet.title, ...form.typed } };
  const families = FAMILIES.map((each) => [each, words(`families.${each}`)] as const);
  return (
    <form method="post" action="/api/objects/take" encType="multipart/form-data" className={forms.form}>
      <OtherErrors form={state} shown={SHOWN} />
      <input type="hidden" name="page" value="/objects/take" />
      <input type="hidden" name="worksheet" value={worksheetQuery(worksheet)} />
      <input type="hidden" name="ids" value={form.typed.ids ?? ids.join(" ")} />
      <ChoiceField
        form={state}
        name="into"
        label={t("into")}
        choices={[["new", t("new")], ...files.map(({ id, title }) => [id, title] as const)]}
      />
      <fieldset className={forms.group}>
        <legend>{t("ifNew")}</legend>
        <LineField form={state} name="title" label={words("fields.title")} note={words("fields.titleNote")} />
        <ChoiceField
          form={state}
          name="family"
          label={words("fields.family")}
          choices={[["", words("choose")], ...families]}
        />
      </fieldset>
      <button type="submit" className={plain.button}>
        {t("take", { count: worksheet.pieces.length })}
      </button>
      <p className={plain.note}>{t("note")}</p>
    </form>
  );
}

function PiecesTaken({ worksheet }: { readonly worksheet: Worksheet }) {
  const t = useTranslations("objectPages.take");
  const sheet = useTranslations("worksheet");
  const period = useTranslations("period");
  return (
    <section className={styles.section} aria-labelledby="pieces">
      <h2 id="pieces">{t("pieces", { count: worksheet.pieces.length })}</h2>
      <ol className={styles.list}>
        {worksheet.pieces.map((piece, i) => (
          <li key={i}>
            <h3>{sheet("piece", { place: i + 1, kind: sheet(`kinds.${piece.kind}`) })}</h3>
            <p className={styles.sentence}>{wordPiece(piece, sheet, period)}</p>
            {piece.reason && <p>{piece.reason}</p>}
          </li>
        ))}
      </ol>
      {worksheet.years && <p className={plain.note}>{t("yearsNote")}</p>}
    </section>
  );
}
