import { useTranslations } from "next-intl";
import { citationField, MOST_CITATIONS } from "#core/drafts/draft-fields";
import { citationsTyped } from "#core/drafts/read-citations";
import { CITATION_PARTS } from "#core/entries/read-citation";
import { CITATION_KINDS, DATED_SAYINGS } from "#core/entries/vocabulary";
import plain from "../plain.module.css";
import { ChoiceField, type FormState, LineField } from "../questions/form-field.tsx";
import styles from "./contribute.module.css";

/** Citations, each with its parts; there is always room for one more. */
export function CitationsPart({ form }: { readonly form: FormState }) {
  const t = useTranslations("contribute");
  const last = Math.max(0, ...citationsTyped(form.typed));
  const places = Array.from({ length: Math.min(MOST_CITATIONS, last + 1) }, (_, i) => i + 1);
  return (
    <>
      {places.map((place) => (
        <CitationFields key={place} form={form} place={place} />
      ))}
      {last + 1 < MOST_CITATIONS && (
        <p>
          <button type="submit" name="act" value="citation" className={plain.quiet}>
            {t("addCitation")}
          </button>
        </p>
      )}
    </>
  );
}

function CitationFields({ form, place }: { readonly form: FormState; readonly place: number }) {
  const t = useTranslations("contribute");
  const parts = useTranslations("citationParts");
  const kinds = useTranslations("citationKinds");
  const sayings = useTranslations("datedSayings");
  const field = { form, optional: false };
  return (
    <fieldset className={styles.inner}>
      <legend>{t("citation", { place })}</legend>
      <div className={styles.two}>
        {CITATION_PARTS.map((part) => {
          const own = {
            ...field,
            name: citationField(place, part),
            label: capital(parts(part)),
            note: t(`notes.citation.${part}`),
          };
          if (part !== "kind" && part !== "says") return <LineField key={part} {...own} />;
          const choices =
            part === "kind"
              ? CITATION_KINDS.map((kind) => [kind, kinds(kind)] as const)
              : DATED_SAYINGS.map((saying) => [saying, sayings(saying)] as const);
          return <ChoiceField key={part} {...own} choices={[["", "–"] as const, ...choices]} />;
        })}
      </div>
    </fieldset>
  );
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
