import { overlaps } from "../dates/interval.ts";
import { parseInterval } from "../dates/parse.ts";
import type { Estimate } from "../dating/estimate.ts";
import type { FoundAnomaly, Said } from "./derived.ts";
import type { ObjectFile } from "./object-file.ts";
import { sameValue } from "./same-value.ts";

export const CAUTIONS = [
  "by-with-open-anomalies",
  "marked-without-match",
  "own-date-outside",
  "stands-on-other-revisions",
] as const;
/** What a reader of the finding has to know beside it; `objects.caution.<is>` says it. It changes nothing. */
export type Caution = Said<(typeof CAUTIONS)[number]>;

export function cautionsOf(
  file: ObjectFile,
  anomalies: readonly FoundAnomaly[],
  estimate: Estimate,
): readonly Caution[] {
  const { finding } = file;
  if (finding === null) return [];
  const open = anomalies.filter(({ key }) => !file.stances.some(({ anomaly }) => anomaly === key));
  const pinned = file.marks.filter(({ match }) => match !== null);
  const now = pinned.flatMap(({ match }) =>
    match ? [{ entry: match.entry, revision: match.revision }] : [],
  );
  const cautions: Caution[] = [];
  if (finding.rung === "by" && open.length > 0)
    cautions.push({
      is: "by-with-open-anomalies",
      params: { count: open.length },
      items: open.flatMap(({ items }) => items),
    });
  if (finding.rung === "marked by" && pinned.length === 0)
    cautions.push({ is: "marked-without-match", params: {}, items: [] });
  if (finding.ownDate && isOutside(finding.ownDate.edtf, estimate))
    cautions.push({ is: "own-date-outside", params: { date: finding.ownDate.edtf }, items: [] });
  if (!sameValue(now, finding.revisions))
    cautions.push({
      is: "stands-on-other-revisions",
      params: {},
      items: pinned.map(({ id }) => ({ list: "marks", id })),
    });
  return cautions;
}

/** No year of the examiner's own date is among those that hold 95 in 100 of the estimate. */
function isOutside(edtf: string, estimate: Estimate): boolean {
  const own = parseInterval(edtf);
  if (!own.ok) return false;
  return !estimate.shortest[95].ranges.some(({ from, to }) => {
    const range = parseInterval(`${four(from)}/${four(to)}`);
    return range.ok && overlaps(own.value, range.value);
  });
}

const four = (year: number) => String(year).padStart(4, "0");
