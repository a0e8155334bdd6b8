import type { Family } from "../vocabulary.ts";
import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import { type ReportParts, TABLES } from "./parts.ts";
import { first, msg } from "./phrases.ts";

type Section = ReportSection<Phrase>;

/** The very revisions that the report stands on, with addresses that stay and their hashes. */
export function citationsSection({ file, host, room }: ReportParts): Section {
  const cited = new Map(
    [
      ...file.marks.flatMap(({ match }) =>
        match ? [{ entry: match.entry, title: match.title, revision: match.revision }] : [],
      ),
      ...(file.finding?.revisions ?? []).map(({ entry, revision }) => ({
        entry,
        title: file.marks.find(({ match }) => match?.entry === entry)?.match?.title ?? entry,
        revision,
      })),
    ].map((each) => [`${each.entry} ${each.revision.number}`, each]),
  );
  const [shown, more] = first([...cited.values()], room.citations);
  const rows = shown.map(({ entry, title, revision }): readonly Phrase[] => [
    msg("citations.revision", { title, number: revision.number }),
    `${host}/entries/${entry}/revisions/${revision.number}`,
    revision.contentHash,
  ]);
  const head = ["what", "address", "hash"].map((column) => msg(`citations.${column}`));
  const blocks: readonly ReportBlock<Phrase>[] =
    rows.length === 0
      ? [{ is: "text", says: msg("citations.none") }]
      : [{ is: "table", caption: msg("citations.caption"), head, rows }, ...more];
  return { id: "citations", heading: msg("sections.citations"), blocks };
}

/** What gave the answers: another version of file, model or tables may give others. */
export function versionsSection({ file, kept, tables }: ReportParts): Section {
  const models = new Set(
    file.marks.flatMap(({ match }) => (match?.model ? [`${match.model.name} ${match.model.version}`] : [])),
  );
  return {
    id: "versions",
    heading: msg("sections.versions"),
    blocks: [
      {
        is: "points",
        points: [
          msg("versions.file", {
            number: kept.version,
            day: { edtf: kept.updatedAt.toISOString().slice(0, 10) },
            hash: kept.hash,
          }),
          models.size === 0
            ? msg("versions.noModel")
            : msg("versions.models", { models: [...models].join(", ") }),
          ...TABLES.map((table) => msg(`versions.${table}`, { hash: tables[table] })),
        ],
      },
    ],
  };
}

const TOYS: ReadonlySet<Family> = new Set(["soft toys", "tin and wooden toys"]);

/** What a reader must not take the report for. */
export function cautionsSection({ file }: ReportParts): Section {
  const points = ["opinion", "notForChildren", "materials", "chances"]
    .filter((each) => each !== "notForChildren" || TOYS.has(file.family))
    .map((each) => msg(`cautions.${each}`));
  return { id: "cautions", heading: msg("sections.cautions"), blocks: [{ is: "points", points }] };
}
