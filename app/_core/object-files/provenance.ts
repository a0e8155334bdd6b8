import { parseInterval } from "../dates/parse.ts";
import { hardBounds } from "../dating/bounds.ts";
import type { Estimate } from "../dating/estimate.ts";
import { type ChainStep, type ProvenanceCheck, type ProvenanceRemark, saying } from "./derived.ts";
import type { FileEvidence } from "./evidence.ts";
import type { ObjectFile, ProvenanceEvent } from "./object-file.ts";
import { loopOf, sameOwner } from "./owner-loops.ts";

type File = Pick<ObjectFile, "events" | "documents">;

/** Years between a step and the oldest document that tells of it from which on it is asked about. */
const TOLD_LATER = 20;
/** Years from the making to the first step from which on the beginning is a gap. */
const BEGINNING = 5;

/** Gaps, contradictions and open questions of the chain of owners, against what the object itself says of its date. */
export function checkProvenance(
  file: File,
  evidence: readonly FileEvidence[],
  estimate: Estimate,
): ProvenanceCheck {
  const chain = file.events.map((event, i) => joinStep(event, file.events[i - 1]));
  return {
    chain,
    gaps: [
      ...gapAtStart(file.events, estimate),
      ...file.events.flatMap((_, i) => gapsBefore(file.events, i)),
    ],
    contradictions: [
      ...outOfOrder(file.events),
      ...loops(file.events, "owner-loop"),
      ...againstObject(file, evidence),
    ],
    questions: [
      ...file.events.flatMap((_, i) => breaksBefore(file.events, i)),
      ...loops(file.events, "owner-returns"),
      ...file.events.flatMap((event) => asked(event, file)),
    ],
  };
}

/**
 * How museums write a chain: a semicolon where it passed straight from one owner to the next, a full stop where that is
 * not known, three points for a gap. From memory of the American Alliance of Museums' guide to provenance research.
 */
function joinStep(event: ProvenanceEvent, before: ProvenanceEvent | undefined): ChainStep {
  if (before === undefined) return { event: event.id, joined: event.gapBefore ? "gap" : "first" };
  if (event.gapBefore) return { event: event.id, joined: "gap" };
  const had = holder(before);
  const isDirect = event.from === "" ? sameOwner(had, event.to) : sameOwner(had, event.from);
  if (had !== "" && isDirect) return { event: event.id, joined: "direct" };
  return { event: event.id, joined: "not known to be direct" };
}

/** Who has it once the step is done. */
const holder = (event: ProvenanceEvent) => event.to || event.from;
const remark = (
  is: ProvenanceRemark["is"],
  params: ProvenanceRemark["params"],
  ...events: readonly ProvenanceEvent[]
): ProvenanceRemark => ({
  ...{ is, params: saying(params) },
  items: events.map(({ id }) => ({ list: "events", id })),
});

function gapAtStart(events: readonly ProvenanceEvent[], estimate: Estimate): readonly ProvenanceRemark[] {
  const first = events.find(({ date, kind }) => date !== null && kind !== "made");
  const from = first && spanOf(first)?.earliest;
  const made = estimate.median === null ? null : Math.floor(estimate.median);
  if (events.some(({ kind }) => kind === "made") || !first || from == null || made === null) return [];
  return from - made > BEGINNING ? [remark("gap-at-start", { made, first: first.date ?? "" }, first)] : [];
}

function gapsBefore(events: readonly ProvenanceEvent[], i: number): readonly ProvenanceRemark[] {
  const [before, event] = [events[i - 1], events[i]];
  if (!event) return [];
  const params = {
    from: before?.date ?? "",
    to: event.date ?? "",
    had: before ? holder(before) : "",
    has: event.to,
  };
  const both = before ? [before, event] : [event];
  if (event.gapBefore) return [remark("gap-marked", params, ...both)];
  if (!before || event.from !== "" || event.to === "" || sameOwner(holder(before), event.to)) return [];
  return [remark("gap", params, ...both)];
}

/** The one who gave it is not the one who had it last. */
function breaksBefore(events: readonly ProvenanceEvent[], i: number): readonly ProvenanceRemark[] {
  const [before, event] = [events[i - 1], events[i]];
  if (!before || !event || event.gapBefore || event.from === "" || holder(before) === "") return [];
  if (sameOwner(holder(before), event.from)) return [];
  return [
    remark("owner-breaks", { had: holder(before), gave: event.from, date: event.date ?? "" }, before, event),
  ];
}

function outOfOrder(events: readonly ProvenanceEvent[]): readonly ProvenanceRemark[] {
  const spans = events.map(spanOf);
  return events.flatMap((event, i) => {
    const last = spans[i]?.lastDay;
    const later = events.slice(0, i).find((_, k) => {
      const first = spans[k]?.firstDay;
      return first != null && last != null && isBefore(last, first);
    });
    if (!later) return [];
    const params = {
      date: event.date ?? "",
      before: later.date ?? "",
      kind: event.kind,
      kindBefore: later.kind,
    };
    return [remark("out-of-order", params, later, event)];
  });
}

function loops(events: readonly ProvenanceEvent[], is: "owner-loop" | "owner-returns") {
  const seen = new Set<string>();
  return events.flatMap((event) => {
    const loop = loopOf(events, event);
    const ids =
      loop?.events
        .map(({ id }) => id)
        .toSorted()
        .join(" ") ?? "";
    if (!loop || loop.isDatedApart !== (is === "owner-returns") || seen.has(ids)) return [];
    seen.add(ids);
    return [remark(is, { owners: loop.owners }, ...loop.events)];
  });
}

/** Steps that the object's own evidence does not allow: had before it could be made, or made when it was not. */
function againstObject({ events }: File, evidence: readonly FileEvidence[]): readonly ProvenanceRemark[] {
  const { notBefore, notAfter } = hardBounds(evidence.filter(({ item }) => item.list !== "events"));
  return events.flatMap((event) => {
    const span = spanOf(event);
    if (!span) return [];
    const who = event.to || event.from;
    const tooEarly = notBefore && span.lastDay !== null && isBefore(span.lastDay, notBefore.day);
    const tooLate = notAfter && span.firstDay !== null && isBefore(notAfter.day, span.firstDay);
    const params = { who, date: event.date ?? "", kind: event.kind };
    if (event.kind !== "made")
      return tooEarly ? [remark("before-it-was-made", { ...params, notBefore: notBefore.day }, event)] : [];
    if (!tooEarly && !tooLate) return [];
    const bounds = { notBefore: notBefore?.day ?? "", notAfter: notAfter?.day ?? "" };
    return [remark("made-against-object", { ...params, ...bounds }, event)];
  });
}

function asked(event: ProvenanceEvent, { documents }: File): readonly ProvenanceRemark[] {
  const params = { kind: event.kind, who: holder(event), date: event.date ?? "" };
  const behind = documents.filter(({ id }) => event.documents.includes(id));
  const when = spanOf(event)?.latest;
  const years = behind.map((each) => spanOf(each)?.earliest ?? null);
  const oldest = years.length > 0 && years.every((year) => year !== null) ? Math.min(...years) : null;
  const later = oldest !== null && when != null ? oldest - when : 0;
  return [
    ...(event.date === null ? [remark("undated", params, event)] : []),
    ...(behind.length === 0 ? [remark("without-document", params, event)] : []),
    ...(later >= TOLD_LATER ? [remark("told-later", { ...params, years: later }, event)] : []),
  ];
}

function spanOf({ date }: { readonly date: string | null }) {
  const read = date === null ? null : parseInterval(date);
  return read?.ok ? read.value : null;
}

/** Days as ISO texts; of years of four digits these compare as they stand. */
const isBefore = (a: string, b: string) => a < b;
