import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { SOURCE_PARTS } from "#core/entries/read-citation";
import { CITATION_KINDS } from "#core/entries/vocabulary";
import { CLAIMS } from "#core/review/entry-event";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField, OtherErrors, TextField } from "../questions/form-field.tsx";
import styles from "./challenge.module.css";

type ChallengeFormProps = {
  readonly slug: string;
  readonly revision: string;
  readonly form: FormState;
  readonly token: string;
};

/** Photographs and citations that the form has room for. */
const PHOTOGRAPHS = [0, 1, 2];
const CITATIONS = [1, 2];
const SHOWN = [
  "claim",
  "evidence",
  ...CITATIONS.flatMap((place) => SOURCE_PARTS.map((part) => `citation-${place}-${part}`)),
];

/** A challenge: what is claimed, and the evidence for it in words, citations and photographs. */
export function ChallengeForm({ slug, revision, form, token }: ChallengeFormProps) {
  const t = useTranslations("challenge");
  const page = `/entries/${slug}/challenge`;
  const challenge = form.typed.challenge || token;
  return (
    <form
      method="post"
      action={`/api/entries/${slug}/challenge`}
      encType="multipart/form-data"
      className={forms.form}
    >
      <OtherErrors form={form} shown={SHOWN} />
      <input type="hidden" name="challenge" value={challenge} />
      <input type="hidden" name="revision" value={revision} />
      <input type="hidden" name="page" value={page} />
      <input type="hidden" name="done" value={`/entries/${slug}/challenges/${challenge}`} />
      <ChoiceField
        form={form}
        name="claim"
        choices={[["", t("choose")], ...CLAIMS.map((claim) => [claim, t(`claims.${claim}`)] as const)]}
      />
      <TextField form={form} name="evidence" rows={7} note={t("evidenceNote")} />
      {CITATIONS.map((place) => (
        <CitationFields key={place} form={form} place={place} />
      ))}
      {PHOTOGRAPHS.map((place) => (
        <More key={place} heading={t("photograph", { place: place + 1 })} isOpen={false}>
          <div className={plain.field}>
            <label htmlFor={`photograph-${place}`}>{t("file")}</label>
            <input
              id={`photograph-${place}`}
              type="file"
              name="photograph"
              accept="image/*"
              className={plain.input}
            />
          </div>
          <div className={forms.pair}>
            {(["credit", "licence"] as const).map((part) => (
              <div key={part} className={plain.field}>
                <label htmlFor={`photograph_${part}-${place}`}>{t(part)}</label>
                <input
                  id={`photograph_${part}-${place}`}
                  name={`photograph_${part}`}
                  className={plain.input}
                  autoComplete="off"
                />
              </div>
            ))}
          </div>
        </More>
      ))}
      <button type="submit" className={plain.button}>
        {t("send")}
      </button>
    </form>
  );
}

function CitationFields({ form, place }: { readonly form: FormState; readonly place: number }) {
  const t = useTranslations("challenge");
  const field = (part: (typeof SOURCE_PARTS)[number]) => `citation-${place}-${part}`;
  const isBegun =
    SOURCE_PARTS.some((part) => part !== "kind" && (form.typed[field(part)] ?? "") !== "") ||
    form.errors.some((error) => error.field.startsWith(`citation-${place}-`));
  return (
    <More heading={t("citation", { place })} isOpen={isBegun}>
      <ChoiceField
        form={form}
        name={field("kind")}
        label={t("citationParts.kind")}
        choices={CITATION_KINDS.map((kind) => [kind, t(`citationKinds.${kind}`)] as const)}
      />
      <div className={forms.pair}>
        {SOURCE_PARTS.filter((part) => part !== "kind").map((part) => (
          <LineField key={part} form={form} name={field(part)} label={t(`citationParts.${part}`)} />
        ))}
      </div>
    </More>
  );
}

type MoreProps = { readonly heading: string; readonly isOpen: boolean; readonly children: ReactNode };

/** What most challenges leave empty is out of the way until it is wanted. */
function More({ heading, isOpen, children }: MoreProps) {
  return (
    <details className={styles.more} open={isOpen}>
      <summary>{heading}</summary>
      <fieldset className={forms.group}>
        <legend className={plain.hidden}>{heading}</legend>
        {children}
      </fieldset>
    </details>
  );
}
