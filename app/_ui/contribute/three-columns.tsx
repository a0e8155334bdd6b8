import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { citationOf } from "#core/drafts/draft-fields";
import type { Conflict } from "#core/entries/merge-content";
import { isOneField } from "#core/entries/settle-conflicts";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import styles from "./contribute.module.css";

type Side = "base" | "mine" | "theirs";

type ThreeColumnsProps = {
  readonly draft: string;
  readonly conflicts: readonly Conflict[];
  /** Whose the third side is. */
  readonly theirs: "theirs" | "theirsSaved";
  /** Says what the conflicts are of, in hidden fields. */
  readonly children: ReactNode;
  /** Something was left to choose when the form was sent. */
  readonly incomplete: boolean;
};

/** What both sides changed, each otherwise: three columns for each field, and a choice. */
export function ThreeColumns({ draft, conflicts, theirs, children, incomplete }: ThreeColumnsProps) {
  const t = useTranslations("contribute");
  return (
    <form method="post" action={`/api/drafts/${draft}/settle`} className={styles.settle}>
      {children}
      {incomplete && (
        <p role="alert" className={styles.choose}>
          {t("chooseAll")}
        </p>
      )}
      {conflicts.map((conflict) => (
        <OneConflict key={conflict.group} conflict={conflict} theirs={theirs} />
      ))}
      <p>
        <button type="submit" className={plain.button}>
          {t("takeBoth")}
        </button>
      </p>
    </form>
  );
}

type OneConflictProps = { readonly conflict: Conflict; readonly theirs: ThreeColumnsProps["theirs"] };

function OneConflict({ conflict, theirs }: OneConflictProps) {
  const t = useTranslations("contribute");
  const fields = useTranslations("fields");
  const { group } = conflict;
  const place = citationOf(group);
  const label =
    place === null
      ? fields((group.startsWith("photograph-") ? "photograph" : group) as "title")
      : t("citation", { place });
  const choice = `choice-${group}`;
  const choices = [
    ["mine", t("choose.mine")],
    ["theirs", t(`choose.${theirs}`)],
    ...(isOneField(conflict) ? [["own", t("choose.own")] as const] : []),
  ] as const;
  return (
    <fieldset className={styles.conflict}>
      <legend>{label}</legend>
      <div className={styles.columns}>
        {(["base", "mine", "theirs"] as const).map((side) => (
          <section key={side}>
            <h3>{t(`sides.${side === "theirs" ? theirs : side}`)}</h3>
            <Said conflict={conflict} side={side} />
          </section>
        ))}
      </div>
      <div className={styles.choices}>
        {choices.map(([value, words]) => (
          <label key={value} className={forms.check}>
            <input type="radio" name={choice} value={value} required />
            {words}
          </label>
        ))}
      </div>
      {isOneField(conflict) && (
        <div className={plain.field}>
          <label htmlFor={`own-${group}`}>{t("own", { field: label })}</label>
          <textarea
            id={`own-${group}`}
            name={`own-${group}`}
            rows={2}
            className={`${plain.input} ${forms.text}`}
            defaultValue={conflict.mine[group] ?? ""}
          />
        </div>
      )}
    </fieldset>
  );
}

function Said({ conflict, side }: { readonly conflict: Conflict; readonly side: Side }) {
  const t = useTranslations("contribute");
  const citations = useTranslations("citationParts");
  const photographs = useTranslations("photographParts");
  const said = Object.entries(conflict[side]);
  if (said.length === 0) return <p className={styles.nothing}>{t("nothing")}</p>;
  if (isOneField(conflict)) return <p className={styles.side}>{said[0]?.[1]}</p>;
  const word = (name: string) => {
    const [, of, part = ""] = /^(citation|photograph)-[^-]+-(.+)$/.exec(name) ?? [];
    return of === "citation" ? citations(part as "title") : photographs(part as "shows");
  };
  return (
    <dl className={styles.side}>
      {said.map(([name, text]) => (
        <div key={name}>
          <dt>{word(name)}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}
