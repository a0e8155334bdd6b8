import { useFormatter, useTranslations } from "next-intl";
import { type Knowledge, knowsSomething } from "#core/look-ups/knowledge";
import plain from "../plain.module.css";
import { sizeWords } from "../size-words.ts";
import styles from "./known.module.css";

/** What the look-up was asked with besides the photograph. */
export function WhatWasKnown({ asked }: { readonly asked: Knowledge }) {
  const t = useTranslations();
  const format = useFormatter();
  if (!knowsSomething(asked)) return null;
  const { letters, widthMm, heightMm, technique, material, kind } = asked;
  const size = widthMm === null && heightMm === null ? null : { width: widthMm, height: heightMm };
  return (
    <div className={styles.asked}>
      <p className={plain.note}>{t("known.asked")}</p>
      <ul>
        {letters !== "" && (
          <li>
            <q>{letters}</q>
          </li>
        )}
        {size && <li>{t("known.size", sizeWords(size, format.number))}</li>}
        {technique && <li>{t(`techniques.${technique}`)}</li>}
        {material !== "" && <li>{material}</li>}
        {kind && <li>{t(`kinds.${kind}`)}</li>}
      </ul>
    </div>
  );
}
