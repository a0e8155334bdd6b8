import { useTranslations } from "next-intl";
import type { Draft } from "#core/drafts/draft";
import { DRAFT_FIELDS, isDraftField } from "#core/drafts/draft-fields";
import type { ReadDraft } from "#core/drafts/read-draft";
import type { MakerSummary } from "#core/entries/maker";
import { whatItHas } from "#core/entries/what-it-has";
import { FieldErrorWords } from "../field-error.tsx";
import plain from "../plain.module.css";
import { type FormState, LineField, OtherErrors, TextField } from "../questions/form-field.tsx";
import { CitationsPart } from "./citations-part.tsx";
import styles from "./contribute.module.css";
import {
  AgainstPart,
  DevicePart,
  MakerPart,
  MakingPart,
  RelationsPart,
  SECTIONS,
  Section,
  WhatPart,
} from "./draft-sections.tsx";
import { KeepDraft } from "./keep-draft.tsx";
import { PeriodPart } from "./period-part.tsx";
import { PhotographsPart } from "./photographs-part.tsx";

const FORM = "draft";

type DraftFormProps = {
  readonly draft: Draft;
  readonly form: FormState;
  readonly read: ReadDraft;
  readonly makers: readonly MakerSummary[];
  readonly materials: readonly string[];
  /** Was it just put together with another side? */
  readonly settled: boolean;
};

/** The form of a draft: a plain form that saves and submits by itself, and saves itself where scripts run. */
export function DraftForm({ draft, form, read, makers, materials, settled }: DraftFormProps) {
  const t = useTranslations("contribute");
  const shown = [...DRAFT_FIELDS, "photograph"];
  const others = form.errors.filter(({ field }) => !isDraftField(field) && !shown.includes(field));
  return (
    <div className={styles.desk}>
      <nav className={styles.parts} aria-label={t("sections.label")}>
        <ol>
          {SECTIONS.map((id) => (
            <li key={id}>
              <a href={`#${id}`}>{t(`sections.${id}`)}</a>
            </li>
          ))}
        </ol>
      </nav>
      <form
        id={FORM}
        method="post"
        action={`/api/drafts/${draft.id}`}
        encType="multipart/form-data"
        className={styles.form}
      >
        <input type="hidden" name="version" defaultValue={draft.version} />
        <input type="hidden" name="base" defaultValue={JSON.stringify(draft.typed)} />
        {/* First in the form, so that Enter in any field saves and does nothing else. */}
        <button
          type="submit"
          name="act"
          value="save"
          className={plain.hidden}
          tabIndex={-1}
          aria-hidden="true"
        >
          {t("save")}
        </button>
        {others.length > 0 && <OtherErrors form={{ ...form, errors: others }} shown={[]} />}
        <Section id="photographs">
          <PhotographsPart draft={draft.id} form={form} photographs={draft.photographs} />
        </Section>
        <Section id="what">
          <WhatPart form={form} />
        </Section>
        <Section id="maker">
          <MakerPart form={form} makers={makers} />
        </Section>
        <Section id="device">
          <DevicePart form={form} />
        </Section>
        <Section id="making">
          <MakingPart form={form} materials={materials} />
        </Section>
        <Section id="when">
          <PeriodPart form={form} />
        </Section>
        <Section id="against">
          <AgainstPart form={form} />
        </Section>
        <Section id="relations">
          <RelationsPart form={form} />
        </Section>
        <Section id="citations">
          <CitationsPart form={form} />
          <TextField form={form} name="sources" optional rows={3} note={t("notes.sources")} />
        </Section>
        <Section id="submit">
          <LineField form={form} name="co_authors" optional note={t("notes.co_authors")} />
          {draft.entry !== null && (
            <TextField form={form} name="summary" rows={3} note={t("notes.summary")} />
          )}
          <Lacking read={read} />
          <p className={plain.note}>{t("submitNote")}</p>
          <p>
            <button type="submit" name="act" value="submit" className={plain.button}>
              {t(draft.entry === null ? "submit" : "submitChange")}
            </button>
          </p>
        </Section>
        <div className={styles.bar}>
          <KeepDraft draft={draft.id} form={FORM} savedAt={draft.updatedAt.toISOString()} settled={settled} />
          <div className={styles.barButtons}>
            <button type="submit" name="act" value="save" className={plain.quiet}>
              {t("save")}
            </button>
            <button type="submit" name="act" value="preview" className={plain.quiet}>
              {t("preview")}
            </button>
          </div>
        </div>
      </form>
    </div>
  );
}

/** What keeps it from being submitted, as it was last saved, and what it lacks to become verified. */
function Lacking({ read }: { readonly read: ReadDraft }) {
  const t = useTranslations("contribute");
  const { photographs, impressions, citations } = whatItHas(read.content, read.photographs);
  const borne = photographs >= 1 && ((photographs >= 2 && impressions >= 2) || citations >= 1);
  return (
    <div className={styles.lacking}>
      {read.errors.length > 0 ? (
        <>
          <h3>{t("lacking")}</h3>
          <ul>
            {read.errors.map((error) => (
              <li key={`${error.field} ${error.rule}`}>
                <FieldErrorWords error={error} /> <a href={`#${error.field}`}>{t("toField")}</a>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <p>{t("lackingNone")}</p>
      )}
      <p>{t(borne ? "enoughVerified" : "lackingVerified")}</p>
    </div>
  );
}
