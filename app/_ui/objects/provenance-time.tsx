import { useTranslations } from "next-intl";
import type { Interval } from "#core/dates/interval";
import { parseInterval } from "#core/dates/parse";
import type { Estimate } from "#core/dating/estimate";
import type { ObjectFile } from "#core/object-files/object-file";
import { axisOver } from "../time/axis.ts";
import { TimeLine, type TimeRow } from "../time/time-line.tsx";

type ProvenanceTimeProps = { readonly content: ObjectFile; readonly estimate: Estimate };

/** Every step of the provenance on one axis with the years in which the object was probably made. */
export function ProvenanceTime({ content, estimate }: ProvenanceTimeProps) {
  const t = useTranslations("objectPages");
  const made = content.events.length > 0 ? madeInterval(estimate) : null;
  const rows: readonly TimeRow[] = [
    ...(made
      ? [{ key: "made", label: t("chain.estimate"), note: t("chain.estimateNote"), period: made }]
      : []),
    ...content.events.map((each) => ({
      key: each.id,
      label: t(`events.${each.kind}`),
      note: [each.from, each.to, each.place].filter((part) => part !== "").join(", "),
      period: read(each.date),
    })),
    ...content.documents
      .filter(({ date }) => date !== null)
      .map((each) => ({
        key: each.id,
        label: `${t(`documents.${each.kind}`)}: ${each.title}`,
        period: read(each.date),
      })),
  ];
  if (rows.length === 0) return null;
  return (
    <TimeLine rows={rows} axis={axisOver(rows.map(({ period }) => period))} caption={t("chain.caption")} />
  );
}

function madeInterval({ shortest }: Estimate): Interval | null {
  const { ranges } = shortest[95];
  const years = ranges.flatMap(({ from, to }) => [from, to]);
  return years.length === 0 ? null : read(`${Math.min(...years)}/${Math.max(...years)}`);
}

function read(edtf: string | null): Interval | null {
  const parsed = edtf === null ? null : parseInterval(edtf);
  return parsed?.ok ? parsed.value : null;
}
