import { useTranslations } from "next-intl";
import type { Explanation, FoundAnomaly, Said } from "#core/object-files/derived";
import type { KeptFile } from "#core/object-files/kept-file";
import type { Stance, WrittenAnomaly } from "#core/object-files/object-file";
import type { RefusedItem } from "./item-form.tsx";
import styles from "./objects.module.css";
import type { SaidWords } from "./said-words.ts";
import { StanceForm } from "./stance-form.tsx";

/** An anomaly to be shown, whoever found it. */
export type ShownAnomaly = {
  readonly key: string;
  readonly says: string;
  readonly explanations: readonly {
    readonly id: string;
    readonly says: string;
    readonly for: readonly string[];
    readonly against: readonly string[];
  }[];
};

/** One that the program found, in words. @param name what an explanation is called, by its id */
export function wordFound(found: FoundAnomaly, say: SaidWords, name: (id: string) => string): ShownAnomaly {
  const words = (all: readonly Said[]) => all.map((each) => say("argument", each));
  return {
    key: found.key,
    says: say("anomaly", found),
    explanations: found.explanations.map((each: Explanation) => ({
      id: each.id,
      says: name(each.id),
      for: words(each.for),
      against: words(each.against),
    })),
  };
}

/** One that somebody wrote. */
export function showWritten({ id, says, explanations }: WrittenAnomaly): ShownAnomaly {
  return {
    key: id,
    says,
    explanations: explanations.map((each) => ({
      id: each.id,
      says: each.says,
      for: each.for ? [each.for] : [],
      against: each.against ? [each.against] : [],
    })),
  };
}

/** Where an explanation stands on its page, to come back to once it is weighed. */
const anchorOf = (anomaly: string, explanation: string) =>
  `weigh-${anomaly}-${explanation}`.replaceAll(/[^\w-]/g, "-");

type AnomalyItemProps = {
  readonly kept: KeptFile;
  readonly anomaly: ShownAnomaly;
  readonly stances: readonly Stance[];
  readonly mayChange: boolean;
  readonly newId: () => string;
  readonly refused: RefusedItem;
};

/** Something that does not fit, with explanations that compete; which is right the examiner weighs, never the file. */
export function AnomalyItem({ kept, anomaly, stances, mayChange, newId, refused }: AnomalyItemProps) {
  const t = useTranslations("objectPages");
  return (
    <>
      <h3>{anomaly.says}</h3>
      {anomaly.explanations.length > 0 && (
        <ul className={`${styles.list} ${styles.close}`}>
          {anomaly.explanations.map((each) => {
            const stance = stances.find(
              ({ anomaly: of, explanation }) => of === anomaly.key && explanation === each.id,
            );
            return (
              <li key={each.id} id={anchorOf(anomaly.key, each.id)}>
                <h4>{each.says}</h4>
                <dl className={`${styles.facts} ${styles.sides}`}>
                  <dt>{t("finding.for")}</dt>
                  <dd>{each.for.join(" ") || t("finding.nothing")}</dd>
                  <dt>{t("finding.against")}</dt>
                  <dd>{each.against.join(" ") || t("finding.nothing")}</dd>
                </dl>
                <p>
                  <strong>
                    {stance
                      ? t("finding.weightNow", { weight: t(`weights.${stance.weight}`) })
                      : t("finding.notWeighed")}
                  </strong>
                  {stance?.reason && <>. {stance.reason}</>}
                </p>
                {mayChange && (
                  <StanceForm
                    kept={kept}
                    anomaly={anomaly.key}
                    explanation={each.id}
                    about={each.says}
                    anchor={anchorOf(anomaly.key, each.id)}
                    stance={stance ?? null}
                    id={stance?.id ?? newId()}
                    refused={refused}
                  />
                )}
              </li>
            );
          })}
        </ul>
      )}
    </>
  );
}
