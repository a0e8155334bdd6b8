import Link from "next/link";
import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { MarkFound } from "#core/object-files/object-file";
import plain from "../plain.module.css";
import { StateSign } from "../state-sign.tsx";
import { Sureness } from "../sureness.tsx";
import { AcceptForm } from "./mark-matches.tsx";
import styles from "./objects.module.css";

type AcceptedMatchProps = {
  readonly kept: KeptFile;
  readonly mark: MarkFound;
  /** What the reference says of the entry today; undefined when it is gone. */
  readonly today: MatchedEntry | undefined;
  readonly mayChange: boolean;
};

/** The entry accepted as a mark's, pinned to the very revision and model that it was accepted by. */
export function AcceptedMatch({ kept, mark, today, mayChange }: AcceptedMatchProps) {
  const t = useTranslations("objectPages.match");
  const { match } = mark;
  if (!match) return null;
  const { revision, model } = match;
  return (
    <div className={styles.words}>
      <p>
        {t("acceptedAs")} <Link href={`/entries/${match.entry}`}>{match.title}</Link>
        {today?.maker && <>, {today.maker.name}</>}
      </p>
      {today && <StateSign state={today.state} />}
      {match.probability !== null && <Sureness probability={match.probability} />}
      <p className={plain.note}>
        <Link href={`/entries/${match.entry}/revisions/${revision.number}`}>
          {t("revision", { number: revision.number })}
        </Link>{" "}
        {t("hash", { hash: revision.contentHash.slice(0, 12) })}
        {". "}
        {model ? t("model", { name: model.name, version: model.version }) : t("byHand")}
      </p>
      {mayChange && (
        <AcceptForm kept={kept} mark={mark.id} entry="" lookUp="">
          {t("takeBack")}
        </AcceptForm>
      )}
    </div>
  );
}
