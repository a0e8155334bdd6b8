import { useTranslations } from "next-intl";
import type { ProvenanceCheck, ProvenanceRemark } from "#core/object-files/derived";
import styles from "./objects.module.css";
import { useSaidWords } from "./said-words.ts";

/** What contradicts, what is missing, and what is worth asking, in this order. */
export function ProvenanceRemarks({ check }: { readonly check: ProvenanceCheck }) {
  const t = useTranslations("objectPages.chain");
  const { contradictions, gaps, questions } = check;
  return (
    <>
      {contradictions.length > 0 && (
        <div className={styles.against}>
          <h2>{t("contradictions")}</h2>
          <Remarks remarks={contradictions} />
        </div>
      )}
      {gaps.length + questions.length > 0 && (
        <section className={styles.section} aria-labelledby="gaps">
          <h2 id="gaps">{t("gaps")}</h2>
          <Remarks remarks={[...gaps, ...questions]} />
        </section>
      )}
    </>
  );
}

function Remarks({ remarks }: { readonly remarks: readonly ProvenanceRemark[] }) {
  const say = useSaidWords();
  return (
    <ul className={styles.points}>
      {remarks.map((each) => (
        <li key={`${each.is} ${each.items.map(({ id }) => id).join(" ")}`}>{say("provenance", each)}</li>
      ))}
    </ul>
  );
}
