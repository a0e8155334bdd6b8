import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import type { FoundAnomaly, Notice, ProvenanceCheck } from "#core/object-files/derived";
import type { FileEvidence } from "#core/object-files/evidence";
import type { Caution } from "#core/object-files/finding";
import type { KeptFile } from "#core/object-files/kept-file";
import type { ObjectFile } from "#core/object-files/object-file";
import { DateChart } from "../dating/date-chart.tsx";
import plain from "../plain.module.css";
import { When } from "../review/when.tsx";
import { wordEdtf } from "../word-edtf.ts";
import { EstimateWords } from "./estimate-words.tsx";
import { useEvidenceName } from "./evidence-part.tsx";
import { FindingWords } from "./finding-words.tsx";
import styles from "./objects.module.css";
import { useSaidWords } from "./said-words.ts";
import { Why } from "./why.tsx";

type OverviewProps = {
  readonly kept: KeptFile;
  readonly estimate: Estimate;
  readonly evidence: readonly FileEvidence[];
  readonly found: readonly FoundAnomaly[];
  readonly check: ProvenanceCheck;
  readonly notices: readonly Notice[];
  readonly cautions: readonly Caution[];
  /** Address of the file's pages; empty where only this one is shown. */
  readonly base: string;
};

/** What is it, how sure, why, what speaks against it, who says so: in this order. */
export function Overview(props: OverviewProps) {
  const { kept, estimate, evidence, cautions } = props;
  const t = useTranslations("objectPages.overview");
  const words = useTranslations("objectPages");
  const period = useTranslations("period");
  const { finding, family, description } = kept.content;
  const name = useEvidenceName();
  const labels = Object.fromEntries(evidence.map((each) => [each.id, name(each)]));
  return (
    <div className={styles.says}>
      <p className={plain.note}>{words(`families.${family}`)}</p>
      {finding ? (
        <FindingWords finding={finding} cautions={cautions} />
      ) : (
        <p className={styles.lead}>{t("notFound")}</p>
      )}
      {description && <p className={styles.told}>{description}</p>}
      <ConditionLine content={kept.content} />
      <section className={styles.section} aria-labelledby="sure">
        <h2 id="sure">{t("sure")}</h2>
        <EstimateWords estimate={estimate} />
        {finding?.ownDate && (
          <p>
            {t("ownDate", { date: wordEdtf(finding.ownDate.edtf, period), reasons: finding.ownDate.reasons })}
          </p>
        )}
      </section>
      <section className={styles.section} aria-labelledby="why">
        <h2 id="why">{t("why")}</h2>
        <Why content={kept.content} estimate={estimate} evidence={evidence} base={props.base} />
      </section>
      <Against {...props} />
      <section className={styles.section} aria-labelledby="who">
        <h2 id="who">{t("who")}</h2>
        <Who kept={kept} />
      </section>
      {evidence.length > 0 && (
        <details className={styles.more}>
          <summary>{t("evidence")}</summary>
          <DateChart estimate={estimate} evidence={evidence} labels={labels} />
        </details>
      )}
    </div>
  );
}

/** What has become of it, in a line. */
function ConditionLine({ content }: { readonly content: ObjectFile }) {
  const t = useTranslations("objectPages");
  if (content.conditions.length === 0) return null;
  const said = content.conditions.map(({ extent, condition, place }) =>
    t("conditionSays", {
      extent: t(`extents.${extent}`),
      condition: t(`conditions.${condition}`),
      place: place || "none",
    }),
  );
  return <p>{t("overview.condition", { all: said.join("; ") })}</p>;
}

function Against({ kept, estimate, found, check, notices, base }: OverviewProps) {
  const t = useTranslations("objectPages.overview");
  const say = useSaidWords();
  const against = [
    ...notices.map((each) => ({ says: say("notice", each), href: `${base}/marks` })),
    ...found.map((each) => ({ says: say("anomaly", each), href: `${base}/finding` })),
    ...kept.content.anomalies.map(({ says }) => ({ says, href: `${base}/finding` })),
    ...check.contradictions.map((each) => ({
      says: say("provenance", each),
      href: `${base}/provenance`,
    })),
    ...(estimate.conflicts.length > 0 ? [{ says: t("conflict"), href: `${base}/finding` }] : []),
  ];
  const told = against.filter(({ says }, at) => against.findIndex((each) => each.says === says) === at);
  return (
    <section className={against.length > 0 ? styles.against : styles.section} aria-labelledby="against">
      <h2 id="against">{t("against")}</h2>
      {against.length === 0 && <p>{t("nothingAgainst")}</p>}
      <ul className={styles.points}>
        {told.map(({ says, href }) => (
          <li key={says}>{base === "" ? says : <Link href={href}>{says}</Link>}</li>
        ))}
      </ul>
    </section>
  );
}

function Who({ kept }: { readonly kept: KeptFile }) {
  const t = useTranslations("objectPages.overview");
  const { finding } = kept.content;
  return (
    <>
      {finding && (
        <p>
          {t.rich("stated", {
            name: finding.by.name,
            count: new Set(finding.revisions.map(({ revision }) => revision.id)).size,
            when: () => <When at={finding.at} />,
          })}
        </p>
      )}
      <p>
        {t.rich("owner", {
          name: kept.owner.name,
          version: kept.version,
          when: () => <When at={kept.updatedAt.toISOString()} />,
        })}
      </p>
      <p className={plain.note}>{t("hash", { hash: kept.hash.slice(0, 16) })}</p>
    </>
  );
}
