import Link from "next/link";
import { useTranslations } from "next-intl";
import type { MakerView } from "#core/entries/maker";
import { How } from "../entry-line.tsx";
import { axisOver } from "../time/axis.ts";
import { TimeLine, type TimeRow } from "../time/time-line.tsx";
import styles from "./maker.module.css";

/** Years of activity, names and marks on one axis, so that what belongs together stands in line. */
export function MakerTime({ view }: { readonly view: MakerView }) {
  const t = useTranslations("makers");
  const rows: readonly TimeRow[] = [
    { key: "active", label: t("active"), period: view.summary.active },
    ...view.otherNames.map(({ name, period }) => ({
      key: `name ${name}`,
      label: <q className={styles.name}>{name}</q>,
      note: t("nameNote"),
      period,
    })),
    ...view.entries.map((entry) => ({
      key: entry.slug,
      label: <Link href={`/entries/${entry.slug}`}>{entry.title}</Link>,
      note: <How entry={entry} />,
      period: entry.period,
    })),
  ];
  const axis = axisOver(rows.map(({ period }) => period));
  return (
    <section className={styles.section} aria-labelledby="time">
      <h2 id="time">{t("timeHeading")}</h2>
      <TimeLine rows={rows} axis={axis} caption={t("timeCaption", { name: view.summary.name })} />
    </section>
  );
}
