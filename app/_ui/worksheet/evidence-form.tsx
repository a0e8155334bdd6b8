import { useTranslations } from "next-intl";
import { type SubmitEvent, useRef } from "react";
import type { WorksheetState } from "#core/dating/answer-worksheet-form";
import { DATED_EVENTS, EVIDENCE_KINDS } from "#core/dating/evidence";
import { BASIS_CHOICES, GROUPS, type EvidenceForm as Typed } from "#core/dating/read-evidence-form";
import { RELIABILITIES, USUAL } from "#core/dating/usual-evidence";
import { addressOf, type Worksheet } from "#core/dating/worksheet";
import { writePiece } from "#core/dating/worksheet-piece";
import plain from "../plain.module.css";
import form from "../questions/form.module.css";
import { ChoiceField, LineField, OtherErrors, TextField } from "../questions/form-field.tsx";
import { wordTrust } from "./piece-words.ts";
import { UnderstoodDate } from "./understood-date.tsx";
import styles from "./worksheet.module.css";

type EvidenceFormProps = {
  readonly state: WorksheetState;
  readonly onType: (typed: Typed) => void;
  readonly onAdd: (typed: Typed) => void;
  readonly onCancel: () => void;
};

const FURTHER = ["event", "sure", "basis", "group"];
const SHOWN = ["kind", "when", "reason", "source", ...FURTHER];

/** A piece to add or to change. Without scripts it is a plain form that carries the whole worksheet. */
export function EvidenceForm({ state, onType, onAdd, onCancel }: EvidenceFormProps) {
  const t = useTranslations("worksheet");
  const element = useRef<HTMLFormElement>(null);
  const { worksheet, form: typed, editing, errors, shown } = state;
  const fields = { typed, errors };
  const isShown = errors.length === 0 && shown !== "" && shown === typed.when;
  const isFurtherWrong = errors.some(({ field }) => FURTHER.includes(field));
  const button = editing === null ? t("addButton") : t("changeButton");
  const read = (): Typed => Object.fromEntries(new FormData(element.current ?? undefined)) as Typed;
  const submit = (event: SubmitEvent) => {
    event.preventDefault();
    onAdd(read());
  };
  return (
    <form
      action="/dates"
      id="form"
      className={`${form.form} ${styles.form}`}
      ref={element}
      onSubmit={submit}
      onInput={() => onType(read())}
    >
      <h2>{editing === null ? t("add") : t("change", { place: editing })}</h2>
      <CarriedSheet worksheet={worksheet} />
      <input type="hidden" name="act" value="add" />
      <input type="hidden" name="shown" value={shown} />
      {editing !== null && <input type="hidden" name="edit" value={editing} />}
      <OtherErrors form={fields} shown={SHOWN} />
      <div className={form.pair}>
        <KindField fields={fields} />
        <LineField form={fields} name="when" label={t("whenLabel")} note={t("whenNote")} />
      </div>
      <UnderstoodDate typed={typed.when ?? ""} />
      {isShown && <p className={styles.taken}>{t("taken", { button })}</p>}
      <TextField
        form={fields}
        name="reason"
        label={t("reasonLabel")}
        note={t("reasonNote")}
        rows={2}
        optional
      />
      <LineField form={fields} name="source" label={t("sourceLabel")} optional />
      <details className={styles.more} open={editing !== null || isFurtherWrong}>
        <summary>{t("more")}</summary>
        <div className={form.pair}>
          <SureField fields={fields} />
          <EventField fields={fields} />
          <BasisField fields={fields} />
          <GroupField fields={fields} />
        </div>
      </details>
      <p className={form.buttons}>
        <button type="submit" className={plain.button}>
          {button}
        </button>
        {editing !== null && (
          <a
            href={addressOf(worksheet)}
            className={plain.quiet}
            onClick={(event) => {
              event.preventDefault();
              onCancel();
            }}
          >
            {t("cancel")}
          </a>
        )}
      </p>
    </form>
  );
}

/** The worksheet itself, so that a plain form sends it whole. */
export function CarriedSheet({
  worksheet,
  head = true,
}: {
  readonly worksheet: Worksheet;
  readonly head?: boolean;
}) {
  const { title, years, pieces } = worksheet;
  return (
    <>
      <input type="hidden" name="v" value="1" />
      {head && title !== "" && <input type="hidden" name="t" value={title} />}
      {head && years && <input type="hidden" name="y" value={`${years.from}/${years.to}`} />}
      {pieces.map((piece, i) => (
        <input key={i} type="hidden" name="e" value={writePiece(piece)} />
      ))}
    </>
  );
}

type Fields = { readonly fields: { readonly typed: Typed; readonly errors: WorksheetState["errors"] } };

function KindField({ fields }: Fields) {
  const t = useTranslations("worksheet");
  const kind = EVIDENCE_KINDS.find((each) => each === fields.typed.kind) ?? "mark";
  const choices = EVIDENCE_KINDS.map((each) => [each, t(`kinds.${each}`)] as const);
  return (
    <ChoiceField
      form={fields}
      name="kind"
      label={t("kindLabel")}
      choices={choices}
      note={t(`kindNotes.${kind}`)}
    />
  );
}

function EventField({ fields }: Fields) {
  const t = useTranslations("worksheet");
  const kind = EVIDENCE_KINDS.find((each) => each === fields.typed.kind) ?? "mark";
  const usual = t("usualEvent", { event: t(`events.${USUAL[kind].event}`) });
  const choices = [["", usual] as const, ...DATED_EVENTS.map((each) => [each, t(`events.${each}`)] as const)];
  return <ChoiceField form={fields} name="event" label={t("eventLabel")} choices={choices} />;
}

function SureField({ fields }: Fields) {
  const t = useTranslations("worksheet");
  const kind = EVIDENCE_KINDS.find((each) => each === fields.typed.kind) ?? "mark";
  const usual = t("usualSure", { words: wordTrust(USUAL[kind].reliability, t) });
  const given = Number(fields.typed.sure);
  const steps =
    RELIABILITIES.some((each) => each === given) || !given ? RELIABILITIES : [given, ...RELIABILITIES];
  const choices = [["", usual] as const, ...steps.map((each) => [String(each), wordTrust(each, t)] as const)];
  return <ChoiceField form={fields} name="sure" label={t("sureLabel")} choices={choices} />;
}

function BasisField({ fields }: Fields) {
  const t = useTranslations("worksheet");
  const choices = [
    ["", t("basisNone")] as const,
    ...BASIS_CHOICES.map((each) => [each, t(`bases.${each}`)] as const),
  ];
  return <ChoiceField form={fields} name="basis" label={t("basisLabel")} choices={choices} />;
}

function GroupField({ fields }: Fields) {
  const t = useTranslations("worksheet");
  const choices = [
    ["", t("groupNone")] as const,
    ...GROUPS.map((each) => [each, t("groupOf", { group: each })] as const),
  ];
  return (
    <ChoiceField form={fields} name="group" label={t("groupLabel")} choices={choices} note={t("groupNote")} />
  );
}
