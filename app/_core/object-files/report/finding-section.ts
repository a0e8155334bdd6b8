import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { filePhotographs } from "./photographs.ts";
import { beginning, boundsPhrase, brief, msg, row, said, word, yearsPhrase } from "./phrases.ts";

type Blocks = readonly ReportBlock<Phrase>[];

/** The object large, what it is, how sure, when, what stays open, and who says so. */
export function findingSection(parts: ReportParts): ReportSection<Phrase> {
  const { file, room } = parts;
  const { finding } = file;
  const whole = file.photographs.filter(({ of }) => of === "whole");
  const shown = whole.length > 0 ? whole : file.photographs;
  return {
    id: "finding",
    heading: msg("sections.finding"),
    blocks: [
      ...filePhotographs(shown.slice(0, 1), "large", file.title),
      {
        is: "lead",
        says: finding ? row([word("rungs", finding.rung), brief(finding.maker, room)], " ") : msg("notFound"),
      },
      ...(finding?.says ? [{ is: "text", says: beginning(finding.says, 1600, room) } as const] : []),
      ...(file.description ? [{ is: "text", says: beginning(file.description, 900, room) } as const] : []),
      ...dates(parts),
      ...(finding?.size
        ? [{ is: "text", says: msg("size", { size: brief(finding.size, room) }) } as const]
        : []),
      ...(finding?.doubts
        ? [{ is: "text", says: msg("doubts", { doubts: beginning(finding.doubts, 700, room) }) } as const]
        : []),
      ...parts.cautions.map((each) => ({ is: "note", says: said("caution", each) }) as const),
      ...(finding
        ? [
            {
              is: "note",
              says: msg("stated", {
                name: finding.by.name,
                day: { edtf: finding.at.slice(0, 10) },
                // A mark that was struck twice is matched twice with one revision.
                count: new Set(finding.revisions.map(({ revision }) => revision.id)).size,
              }),
            } as const,
          ]
        : []),
      ...filePhotographs(shown.slice(1, 5), "row", file.title),
    ],
  };
}

function dates({ file, estimate, room }: ReportParts): Blocks {
  const own = file.finding?.ownDate ?? null;
  const isDisputed = estimate.conflicts.length > 0;
  const years = row(
    estimate.shortest[95].ranges.map(({ from, to }) => yearsPhrase(from, to)),
    ", ",
  );
  const says = isDisputed ? "boundsDisputed" : "bounds";
  const isDated = Object.keys(estimate.weights).length > 0;
  const computed: Blocks = isDated
    ? [
        { is: "text", says: msg("estimate", { years }) },
        {
          is: "text",
          says: msg(says, { bounds: boundsPhrase(isDisputed ? estimate.undisputed : estimate) }),
        },
      ]
    : [{ is: "text", says: msg("notDated") }];
  return [
    ...(own
      ? [
          {
            is: "text",
            says: msg("ownDate", { date: { edtf: own.edtf }, reasons: beginning(own.reasons, 700, room) }),
          } as const,
        ]
      : []),
    ...computed,
  ];
}
