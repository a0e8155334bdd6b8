import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { Finding, ObjectFile } from "#core/object-files/object-file";
import { typedItem } from "#core/object-files/typed-item";
import { AnomaliesPart } from "#ui/objects/anomalies-part";
import { AnomalyForm } from "#ui/objects/anomaly-form";
import { EvidencePart } from "#ui/objects/evidence-part";
import { FileFrame } from "#ui/objects/file-frame";
import { FindingForm } from "#ui/objects/finding-form";
import { FindingWords } from "#ui/objects/finding-words";
import { stateOf, stateOfNew } from "#ui/objects/item-form";
import { More } from "#ui/objects/more";
import { derivedOf, fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import styles from "../../../../_ui/objects/objects.module.css";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.finding"), robots: { index: false } };
}

/** What does not fit, the date by the evidence, and what the examiner finds. */
export default async function FindingPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [{ kept, access, entries, isStranger }, t] = await Promise.all([
    fileForPage(id, "finding"),
    getTranslations("objectPages"),
  ]);
  const { form, said } = query;
  const refused = keptForm(form);
  const { content } = kept;
  const { estimate, evidence, found, cautions } = derivedOf(content, entries);
  const mayChange = access !== "view";
  const isRefused = refused?.typed.did === "finding";
  const state = stateOf(
    refused,
    "finding",
    isRefused ? (refused?.typed.id ?? "") : newItemId(),
    content.finding ? typedFinding(content.finding) : { maker: makerMarked(content.marks, entries) },
  );
  const written = stateOfNew(refused, "anomaly", content.anomalies, newItemId());
  return (
    <FileFrame {...{ kept, access, isStranger }} part="finding" said={said}>
      <p className={styles.jumps}>
        {(["anomalies", "evidence", "finding"] as const).map((part) => (
          <a key={part} href={`#${part}`}>
            {t(`finding.jump.${part}`)}
          </a>
        ))}
      </p>
      <AnomaliesPart kept={kept} found={found} mayChange={mayChange} newId={newItemId} refused={refused} />
      {mayChange && (
        <More words={t("finding.addAnomaly")} isOpen={written.given}>
          <AnomalyForm kept={kept} state={written} isThere={false} newId={newItemId} />
        </More>
      )}
      <EvidencePart
        kept={kept}
        estimate={estimate}
        evidence={evidence}
        mayChange={mayChange}
        taken={query.taken === undefined ? null : { taken: count(query.taken), known: count(query.known) }}
      />
      <section aria-labelledby="finding">
        <h2 id="finding">{t("parts.finding")}</h2>
        {content.finding ? (
          <FindingWords finding={content.finding} cautions={cautions} />
        ) : (
          <p>{t("finding.none")}</p>
        )}
        {mayChange && <FindingForm kept={kept} state={state} />}
      </section>
    </FileFrame>
  );
}

const count = (text: string | string[] | undefined): number => Math.max(0, Math.trunc(Number(text)) || 0);

/** Whose mark was found on it, as a beginning. */
function makerMarked(marks: ObjectFile["marks"], entries: readonly MatchedEntry[]): string {
  const matched = marks.flatMap(({ match }) => entries.filter(({ slug }) => slug === match?.entry));
  return matched.find(({ makerPart }) => makerPart === "made")?.maker?.name ?? "";
}

const typedFinding = (finding: Finding) => ({
  ...typedItem(finding),
  own_date: finding.ownDate?.typed ?? "",
  own_date_reasons: finding.ownDate?.reasons ?? "",
});
