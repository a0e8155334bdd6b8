import Link from "next/link";
import { useTranslations } from "next-intl";
import type { MakerView } from "#core/entries/maker";
import { PeriodWords } from "../period-words.tsx";
import styles from "./maker.module.css";

/** Who came before and who came after, and how it passed on. */
export function MakerNeighbours({ view }: { readonly view: MakerView }) {
  const t = useTranslations("makers");
  const sides = [
    { key: "before", makers: view.predecessors },
    { key: "after", makers: view.successors },
  ] as const;
  if (sides.every(({ makers }) => makers.length === 0)) return null;
  return (
    <section className={styles.neighbours} aria-label={t("neighbours")}>
      {sides.map(
        ({ key, makers }) =>
          makers.length > 0 && (
            <div key={key}>
              <h2 className={styles.small}>{t(key)}</h2>
              <ul>
                {makers.map(({ how, maker }) => (
                  <li key={maker.slug}>
                    <Link href={`/makers/${maker.slug}`}>{maker.name}</Link>
                    <span>
                      {t(`succession.${how}`)}, <PeriodWords period={maker.active} />
                    </span>
                  </li>
                ))}
              </ul>
            </div>
          ),
      )}
    </section>
  );
}
