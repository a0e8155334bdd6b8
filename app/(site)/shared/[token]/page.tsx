import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { DocumentList } from "#ui/objects/document-list";
import { EventList } from "#ui/objects/event-list";
import { ItemPhotographs } from "#ui/objects/item-photographs";
import { MeasurementList } from "#ui/objects/measurement-list";
import { Overview } from "#ui/objects/overview";
import { ProvenanceRemarks } from "#ui/objects/provenance-remarks";
import { ProvenanceTime } from "#ui/objects/provenance-time";
import { derivedOf, newItemId, sharedFile } from "#web/object-files/reading";
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
        <MeasurementList {...common} />
        <ProvenanceTime content={kept.content} estimate={derived.estimate} />
        <ProvenanceRemarks check={derived.check} />
        <EventList {...common} check={derived.check} />
        <DocumentList {...common} newId={newItemId} base={base} />
      </div>
    </article>
  );
}
