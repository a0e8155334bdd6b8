import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { RELATION_FIELDS, type RelationField } from "#core/drafts/draft-fields";
import type { MakerSummary } from "#core/entries/maker";
import { FIELDS, KINDS, MAKER_KINDS, MAKER_PARTS, TECHNIQUES } from "#core/entries/vocabulary";
import plain from "../plain.module.css";
import { ChoiceField, type FormState, LineField, TextField } from "../questions/form-field.tsx";
import styles from "./contribute.module.css";

type PartProps = { readonly form: FormState };

/** A part of the form, under its heading. */
export function Section({ id, children }: { readonly id: SectionId; readonly children: ReactNode }) {
  const t = useTranslations("contribute.sections");
  return (
    <section id={id} className={styles.section} aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>{t(id)}</h2>
      {children}
    </section>
  );
}

/** The parts in the order in which an entry's page says them. */
export const SECTIONS = [
  "photographs",
  "what",
  "maker",
  "device",
  "making",
  "when",
  "against",
  "relations",
  "citations",
  "submit",
] as const;
type SectionId = (typeof SECTIONS)[number];

export function WhatPart({ form }: PartProps) {
  const t = useTranslations("contribute");
  const q = useTranslations("questionForm");
  const kinds = useTranslations("kinds");
  const fields = useTranslations("entryFields");
  return (
    <>
      <LineField form={form} name="title" note={t("notes.title")} />
      <div className={styles.two}>
        <ChoiceField
          form={form}
          name="kind"
          note={t("notes.kind")}
          choices={[["", q("choose")], ...KINDS.map((each) => [each, kinds(each)] as const)]}
        />
        <ChoiceField
          form={form}
          name="field"
          note={t("notes.field")}
          choices={[["", q("choose")], ...FIELDS.map((each) => [each, fields(each)] as const)]}
        />
      </div>
      <TextField form={form} name="description" rows={6} note={t("notes.description")} />
    </>
  );
}

export function MakerPart({ form, makers }: PartProps & { readonly makers: readonly MakerSummary[] }) {
  const t = useTranslations("contribute");
  const q = useTranslations("questionForm");
  const kinds = useTranslations("makers.kinds");
  const none = ["", q("notKnown")] as const;
  return (
    <>
      <div className={styles.two}>
        <ChoiceField
          form={form}
          name="maker"
          note={t("notes.maker")}
          choices={[none, ...makers.map(({ slug, name }) => [slug, name] as const)]}
        />
        <ChoiceField
          form={form}
          name="maker_part"
          note={t("notes.maker_part")}
          choices={[none, ...MAKER_PARTS.map((each) => [each, q(`parts.${each}`)] as const)]}
        />
      </div>
      <details className={styles.more} open={(form.typed.new_maker ?? "") !== ""}>
        <summary>{t("newMaker")}</summary>
        <div className={styles.two}>
          <LineField form={form} name="new_maker" optional />
          <ChoiceField
            form={form}
            name="new_maker_kind"
            choices={[none, ...MAKER_KINDS.map((each) => [each, kinds(each)] as const)]}
          />
          <LineField form={form} name="new_maker_place" optional />
        </div>
      </details>
    </>
  );
}

export function DevicePart({ form }: PartProps) {
  const t = useTranslations("contribute");
  return (
    <>
      <TextField form={withLines(form)} name="words" optional rows={3} note={t("notes.words")} />
      <div className={styles.two}>
        <LineField form={form} name="emblem" optional note={t("notes.emblem")} />
        <LineField form={form} name="frame" optional note={t("notes.frame")} />
      </div>
    </>
  );
}

/** Words with a stroke for each new line are shown line by line. */
const withLines = (form: FormState): FormState => ({
  ...form,
  typed: { ...form.typed, words: (form.typed.words ?? "").replace(/\s*\/\s*/g, "\n") },
});

export function MakingPart({ form, materials }: PartProps & { readonly materials: readonly string[] }) {
  const t = useTranslations("contribute");
  const q = useTranslations("questionForm");
  const techniques = useTranslations("techniques");
  return (
    <div className={styles.two}>
      <ChoiceField
        form={form}
        name="technique"
        note={t("notes.technique")}
        choices={[["", q("notKnown")], ...TECHNIQUES.map((each) => [each, techniques(each)] as const)]}
      />
      <LineField form={form} name="material" optional list="materials" note={t("notes.material")} />
      <LineField form={form} name="place_on_object" optional note={t("notes.place_on_object")} />
      <LineField form={form} name="colours" optional note={t("notes.colours")} />
      <LineField form={form} name="size_mm" optional note={t("notes.size_mm")} />
      <datalist id="materials">
        {materials.map((material) => (
          <option key={material} value={material} />
        ))}
      </datalist>
    </div>
  );
}

export function AgainstPart({ form }: PartProps) {
  const t = useTranslations("contribute");
  return (
    <>
      <TextField form={form} name="distinguish" optional rows={3} note={t("notes.distinguish")} />
      <TextField form={form} name="reproductions" optional rows={3} note={t("notes.reproductions")} />
    </>
  );
}

export function RelationsPart({ form }: PartProps) {
  const t = useTranslations("contribute");
  return (
    <>
      <p className={plain.note}>{t("notes.relation")}</p>
      <div className={styles.two}>
        {(Object.keys(RELATION_FIELDS) as RelationField[]).map((name) => (
          <LineField key={name} form={form} name={name} optional />
        ))}
      </div>
    </>
  );
}
