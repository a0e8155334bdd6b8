import Link from "next/link";
import { useTranslations } from "next-intl";
import type { MakerSummary } from "#core/entries/maker";
import type { KeptInterest } from "#core/members/account";
import { STAKES } from "#core/members/member";
import plain from "../plain.module.css";
import form from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField } from "../questions/form-field.tsx";
import styles from "./members.module.css";
import { DayWords } from "./standing-words.tsx";

type InterestsProps = {
  readonly interests: readonly KeptInterest[];
  /** Names of makers and titles of entries by `kind slug`. */
  readonly names: ReadonlyMap<string, string>;
  /** The member looks at their own, and may end them. */
  readonly own?: boolean;
};

/** Declared interests; those that are over too, and until when. */
export function Interests({ interests, names, own = false }: InterestsProps) {
  const t = useTranslations("account");
  if (interests.length === 0) return <p>{t("noInterests")}</p>;
  return (
    <ul className={styles.lines}>
      {interests.map((interest) => {
        const { kind, slug } = interest.in;
        const name = names.get(`${kind} ${slug}`) ?? slug;
        return (
          <li key={interest.id}>
            <div>
              <Link href={`/${kind === "maker" ? "makers" : "entries"}/${slug}`}>{name}</Link>
              <InterestWords interest={interest} />
            </div>
            {own && interest.endedAt === null && (
              <form method="post" action="/api/interests/end">
                <input type="hidden" name="interest" value={interest.id} />
                <button type="submit" className={plain.quiet} aria-label={t("endInterestOf", { name })}>
                  {t("endInterest")}
                </button>
              </form>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function InterestWords({ interest }: { readonly interest: KeptInterest }) {
  const t = useTranslations();
  const { stake, note, declaredAt, endedAt } = interest;
  return (
    <span className={plain.note}>
      {t(`stakes.${stake}`)}
      {note && `: ${note}`} {" · "}
      {endedAt === null
        ? t.rich("members.since2", { date: () => <DayWords at={declaredAt} /> })
        : t.rich("members.over", {
            from: () => <DayWords at={declaredAt} />,
            to: () => <DayWords at={endedAt} />,
          })}
    </span>
  );
}

type DeclareFormProps = { readonly state: FormState; readonly makers: readonly MakerSummary[] };

/** A stake in one of the makers that are here. */
export function DeclareForm({ state, makers }: DeclareFormProps) {
  const t = useTranslations();
  return (
    <form method="post" action="/api/interests/declare" className={form.form}>
      <div className={form.pair}>
        <ChoiceField
          form={state}
          name="maker"
          choices={[["", t("account.chooseMaker")], ...makers.map(({ slug, name }) => [slug, name] as const)]}
        />
        <ChoiceField
          form={state}
          name="stake"
          choices={[
            ["", t("account.chooseStake")],
            ...STAKES.map((stake) => [stake, t(`stakes.${stake}`)] as const),
          ]}
        />
      </div>
      <LineField form={state} name="note" optional />
      <button type="submit" className={plain.button}>
        {t("account.declare")}
      </button>
    </form>
  );
}
