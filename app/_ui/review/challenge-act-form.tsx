import type { ReactNode } from "react";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import type { FormState } from "../questions/form-field.tsx";

type ChallengeActFormProps = {
  readonly slug: string;
  readonly challenge: { readonly id: string };
  readonly form: FormState;
  /** Its address under the entry's. */
  readonly act: "appeal" | "appeal-vote" | "decide";
  /** What its button says. */
  readonly send: string;
  /** The fields, by what was typed into this form and refused. */
  readonly children: (form: FormState) => ReactNode;
};

/** A form about a challenge; it comes back to the challenge's page. */
export function ChallengeActForm({ slug, challenge, form, act, send, children }: ChallengeActFormProps) {
  const page = `/entries/${slug}/challenges/${challenge.id}`;
  return (
    <form method="post" action={`/api/entries/${slug}/${act}`} className={forms.form}>
      <input type="hidden" name="challenge" value={challenge.id} />
      <input type="hidden" name="page" value={page} />
      <input type="hidden" name="done" value={page} />
      {children(form.typed.did === act ? form : { typed: {}, errors: [] })}
      <button type="submit" className={plain.button}>
        {send}
      </button>
    </form>
  );
}
