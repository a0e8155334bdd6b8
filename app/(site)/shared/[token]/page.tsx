import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { AnomaliesPart } from "#ui/objects/anomalies-part";
import { ConditionList } from "#ui/objects/condition-list";
import { DocumentList } from "#ui/objects/document-list";
import { EventList } from "#ui/objects/event-list";
import { EvidencePart } from "#ui/objects/evidence-part";
import { ItemPhotographs } from "#ui/objects/item-photographs";
import { MeasurementList } from "#ui/objects/measurement-list";
import { ObservationList } from "#ui/objects/observation-list";
import { Overview } from "#ui/objects/overview";
import { OwnObservations } from "#ui/objects/own-observations";
import { ProvenanceRemarks } from "#ui/objects/provenance-remarks";
import { ProvenanceTime } from "#ui/objects/provenance-time";
import { derivedOf, newItemId, sharedFile } from "#web/object-files/reading";
import { pointsOf } from "../../../_ui/objects/exam-point.ts";
import styles from "../../../_ui/objects/objects.module.css";
import plain from "../../../_ui/plain.module.css";

type Props = { readonly params: Promise<{ readonly token: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await sharedFile((await params).token);
  // The address is the key: no other site is told of it.
  return { title: found?.kept.content.title ?? "", robots: { index: false }, referrer: "no-referrer" };
}

/** A file that its owner shared by a link, to be read. */
export default async function SharedPage({ params }: Props) {
  const { token } = await params;
  const [found, t] = await Promise.all([sharedFile(token), getTranslations("objectPages")]);
  if (!found) notFound();
  const { kept, entries } = found;
  const base = `/shared/${token}/images`;
  const derived = derivedOf(kept.content, entries);
  const looked = pointsOf(kept.content, newItemId).filter(({ observed }) => observed !== null);
  const common = { kept, refused: null, mayChange: false };
  return (
    <article>
      <header className={styles.head}>
        <p className={plain.note}>
          {t("shared.by", { name: kept.owner.name })}. {t("shared.lede")}
        </p>
        <h1>{kept.content.title}</h1>
      </header>
      <div className={styles.body}>
        <div className={styles.two}>
          <ItemPhotographs
            kept={kept}
            photographs={kept.content.photographs}
            alt={kept.content.title}
            part="overview"
            mayChange={false}
            base={base}
            isLead
          />
          <div className={styles.section}>
            <Overview kept={kept} {...derived} base="" />
            <p>
              <Link href={`/shared/${token}/report`} prefetch={false} className={plain.quiet}>
                {t("overview.report")}
              </Link>
            </p>
          </div>
        </div>
        <AnomaliesPart {...common} found={derived.found} newId={newItemId} />
        <EvidencePart kept={kept} {...derived} mayChange={false} taken={null} />
        {looked.length > 0 && (
          <section className={styles.section} aria-labelledby="examined">
            <h2 id="examined">{t("shared.examined")}</h2>
            <ObservationList points={looked} base={base} heading="h3" />
          </section>
        )}
        <OwnObservations {...common} newId={newItemId} base={base} />
        <section className={styles.section} aria-labelledby="measured">
          <h2 id="measured">{t("shared.measured")}</h2>
          <MeasurementList {...common} />
        </section>
        <section className={styles.section} aria-labelledby="condition">
          <h2 id="condition">{t("parts.condition")}</h2>
          {kept.content.conditions.length === 0 && <p>{t("noConditions")}</p>}
          <ConditionList {...common} newId={newItemId} heading="h3" base={base} />
        </section>
        <ProvenanceTime content={kept.content} estimate={derived.estimate} />
        <ProvenanceRemarks check={derived.check} />
        <EventList {...common} check={derived.check} />
        <DocumentList {...common} newId={newItemId} base={base} />
      </div>
    </article>
  );
}
