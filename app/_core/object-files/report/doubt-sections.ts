import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { beginning, first, msg, row, said, word } from "./phrases.ts";

type Shown = {
  readonly key: string;
  readonly says: Phrase;
  readonly explanations: readonly {
    readonly id: string;
    readonly says: Phrase;
    readonly for: Phrase;
    readonly against: Phrase;
  }[];
};

/** What does not fit, with every explanation, what speaks for and against it, and what the examiner thinks. */
export function anomaliesSection(parts: ReportParts): ReportSection<Phrase> {
  const { found, file, room } = parts;
  const all: readonly Shown[] = [
    ...found.map((each) => ({
      key: each.key,
      says: said("anomaly", each),
      explanations: each.explanations.map(({ id, ...says }) => ({
        id,
        says: { key: `objects.explanation.${id}` },
        for: row(
          says.for.map((why) => said("argument", why)),
          " ",
        ),
        against: row(
          says.against.map((why) => said("argument", why)),
          " ",
        ),
      })),
    })),
    ...file.anomalies.map(({ id, says, explanations }) => ({
      key: id,
      says: beginning(says, 600, room),
      explanations: explanations.map((each) => ({
        id: each.id,
        says: beginning(each.says, 200, room),
        for: beginning(each.for, 400, room),
        against: beginning(each.against, 400, room),
      })),
    })),
  ];
  const [shown, more] = first(all, room.anomalies);
  const none: readonly ReportBlock<Phrase>[] =
    all.length === 0 ? [{ is: "text", says: { key: "objectPages.finding.noAnomalies" } }] : [];
  return {
    id: "anomalies",
    heading: msg("sections.anomalies"),
    blocks: [...none, ...shown.flatMap((each) => anomalyBlocks(each, parts)), ...more],
  };
}

function anomalyBlocks(
  { key, says, explanations: all }: Shown,
  { file, room }: ReportParts,
): readonly ReportBlock<Phrase>[] {
  const [explanations, more] = first(all, room.explanations);
  const rows = explanations.map((each): readonly Phrase[] => {
    const stance = file.stances.find(
      ({ anomaly, explanation }) => anomaly === key && explanation === each.id,
    );
    return [
      each.says,
      orNothing(each.for),
      orNothing(each.against),
      stance
        ? row([word("weights", stance.weight), beginning(stance.reason, 300, room)], ": ")
        : { key: "objectPages.finding.notWeighed" },
    ];
  });
  const head = ["explanation", "for", "against", "weight"].map((column) => msg(`anomalies.${column}`));
  return [
    { is: "heading", says },
    ...(rows.length > 0 ? [{ is: "table", caption: msg("anomalies.caption"), head, rows } as const] : []),
    ...more,
  ];
}

function orNothing(says: Phrase): Phrase {
  const isEmpty = says === "" || (typeof says === "object" && "row" in says && says.row.length === 0);
  return isEmpty ? { key: "objectPages.finding.nothing" } : says;
}
