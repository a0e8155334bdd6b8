import { parseInterval } from "../../dates/parse.ts";
import type { ProvenanceEvent } from "../object-file.ts";
import type { Phrase, ReportBar, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { beginning, brief, first, msg, row, said, when, word, yearsPhrase } from "./phrases.ts";

/** The chain as museums write it, on the years of the object's making; then what is missing or cannot be so. */
export function provenanceSection(parts: ReportParts): ReportSection<Phrase> {
  const { check, file, room } = parts;
  const heading = msg("sections.provenance");
  if (file.events.length === 0)
    return { id: "provenance", heading, blocks: [{ is: "text", says: { key: "objectPages.chain.none" } }] };
  const [events, more] = first(file.events, room.events);
  const remarks = (title: string, all: ReportParts["check"]["gaps"]): readonly ReportBlock<Phrase>[] =>
    all.length === 0
      ? []
      : [
          { is: "heading", says: msg(title) },
          { is: "points", points: all.slice(0, room.remarks).map((each) => said("provenance", each)) },
        ];
  return {
    id: "provenance",
    heading,
    blocks: [
      { is: "points", points: events.map((event) => eventPhrase(event, parts)) },
      ...more,
      ...timeLine(parts, events),
      ...remarks("provenance.contradictions", check.contradictions),
      ...remarks("provenance.gaps", [...check.gaps, ...check.questions]),
    ],
  };
}

function eventPhrase(event: ProvenanceEvent, { check, file, room }: ReportParts): Phrase {
  const joined = check.chain.find((step) => step.event === event.id)?.joined;
  const { passage, qualifier, date, dateTyped } = event;
  const from = brief(event.from, room);
  const to = brief(event.to, room);
  const place = brief(event.place, room);
  const passed: Phrase =
    to === "" || passage === "not known" ? to : row([word("passages", passage), to], " ");
  const sure: Phrase = qualifier === "certain" ? "" : word("qualifiers", qualifier);
  const behind = file.documents
    .filter(({ id }) => event.documents.includes(id))
    .map(({ title }) => brief(title, room));
  return row([
    joined === "gap" ? { key: "objectPages.chain.gapBefore" } : "",
    row([word("events", event.kind), row([from, sure, passed, place, when(date, dateTyped)], ", ")], ": "),
    event.told === "" ? "" : msg("provenance.told", { told: beginning(event.told, 400, room) }),
    behind.length === 0
      ? msg("provenance.undocumented")
      : msg("provenance.behind", { titles: behind.slice(0, 4).join("; ") }),
  ]);
}

/** Nothing is drawn where nothing is dated. */
function timeLine(
  { estimate, room }: ReportParts,
  events: readonly ProvenanceEvent[],
): readonly ReportBlock<Phrase>[] {
  const bars = events.flatMap((event): readonly ReportBar<Phrase>[] => {
    const read = event.date === null ? null : parseInterval(event.date);
    if (!read?.ok) return [];
    const { earliest, latest, edtf } = read.value;
    const label = row([word("events", event.kind), brief(event.to || event.from, room)], ": ");
    return [{ label, note: "", when: { edtf }, from: earliest, to: latest }];
  });
  const made = estimate.shortest[95].ranges.map(
    ({ from, to }): ReportBar<Phrase> => ({
      ...{ label: msg("evidence.made"), note: "", from, to },
      when: yearsPhrase(from, to),
    }),
  );
  const known = [...made, ...bars].flatMap(({ from, to }) => [from, to]).filter((year) => year !== null);
  if (bars.length === 0 || known.length === 0) return [];
  const years = { from: Math.min(...known), to: Math.max(...known) };
  const caption: Phrase = { key: "objectPages.chain.caption" };
  return [{ is: "chart", chart: "provenance", caption, years, curve: null, bars: [...made, ...bars] }];
}
