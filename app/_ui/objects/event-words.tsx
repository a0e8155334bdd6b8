import { useTranslations } from "next-intl";
import type { ChainStep } from "#core/object-files/derived";
import type { ProvenanceEvent } from "#core/object-files/object-file";
import plain from "../plain.module.css";
import { wordEdtf } from "../word-edtf.ts";
import styles from "./objects.module.css";

type EventWordsProps = { readonly event: ProvenanceEvent; readonly step: ChainStep | undefined };

/** One step as museums write it: how sure, how it passed, from whom to whom, where and when; a gap before it shown. */
export function EventWords({ event, step }: EventWordsProps) {
  const t = useTranslations("objectPages");
  const period = useTranslations("period");
  const { from, to, passage, qualifier, place, date, dateTyped } = event;
  const passed = to === "" ? "" : passage === "not known" ? to : `${t(`passages.${passage}`)} ${to}`;
  const sure = qualifier === "certain" ? "" : t(`qualifiers.${qualifier}`);
  const when = date === null ? dateTyped : wordEdtf(date, period);
  const said = [from, `${sure} ${passed}`.trim(), place, when].filter((part) => part !== "").join(", ");
  return (
    <>
      {step?.joined === "gap" && <p className={plain.note}>{t("chain.gapBefore")}</p>}
      <h3>{t(`events.${event.kind}`)}</h3>
      <p>{said}</p>
      {date !== null && dateTyped !== "" && (
        <p className={plain.note}>{t("chain.toldAs", { told: dateTyped })}</p>
      )}
      {event.told && <blockquote className={styles.told}>{event.told}</blockquote>}
    </>
  );
}
