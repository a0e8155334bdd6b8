import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { typedItem } from "#core/object-files/typed-item";
import plain from "../plain.module.css";
import { wordEdtf } from "../word-edtf.ts";
import { DocumentForm } from "./document-form.tsx";
import { type RefusedItem, stateOf } from "./item-form.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type DocumentListProps = {
  readonly kept: KeptFile;
  readonly refused: RefusedItem;
  readonly mayChange: boolean;
  /** A new id for each form's photograph. */
  readonly newId: () => string;
  readonly base?: string;
};

/** The documents, each with its scans, its words, its date, and who vouches for it. */
export function DocumentList({ kept, refused, mayChange, newId, base = "/images" }: DocumentListProps) {
  const t = useTranslations("objectPages");
  const period = useTranslations("period");
  return (
    <ul className={styles.list}>
      {kept.content.documents.map((each) => {
        const { id, kind, title, date, dateTyped, transcription, vouchedBy, keptAt, scans } = each;
        const typed = {
          ...typedItem(each),
          when: dateTyped || (date ?? ""),
          vouched_by: vouchedBy,
          kept_at: keptAt,
        };
        const state = stateOf(refused, "document", id, typed);
        const facts = [
          date && wordEdtf(date, period),
          vouchedBy && t("vouched", { name: vouchedBy }),
          keptAt && t("keptThere", { place: keptAt }),
        ].filter((words) => words);
        return (
          <li key={id} id={`document-${id}`}>
            <h3>
              {t(`documents.${kind}`)}: {title}
            </h3>
            {facts.length > 0 && <p className={plain.note}>{facts.join(". ")}.</p>}
            <div className={styles.photographs}>
              {scans.map((scan) => (
                <figure key={scan.id}>
                  <a href={`${base}/${scan.sha256}`} className={styles.mat}>
                    <img src={`${base}/${scan.sha256}?w=640`} alt={t("scanOf", { title })} loading="lazy" />
                  </a>
                  {mayChange && (
                    <RemoveItem
                      kept={kept}
                      list="scans"
                      id={scan.id}
                      document={id}
                      part="provenance"
                      about={t("scanOf", { title })}
                    />
                  )}
                </figure>
              ))}
            </div>
            {transcription && (
              <More words={t("transcriptionOf")} isOpen={transcription.length < 600}>
                <blockquote className={styles.told}>{transcription}</blockquote>
              </More>
            )}
            {mayChange && (
              <>
                <More words={t("changeDocument")} isOpen={state.given}>
                  <DocumentForm kept={kept} state={state} isThere photographId={newId()} />
                </More>
                <RemoveItem kept={kept} list="documents" id={id} part="provenance" about={title} />
              </>
            )}
          </li>
        );
      })}
    </ul>
  );
}
