import { checklistOf, pointOf } from "../checklist.ts";
import type { FileMeasurement, Observation } from "../object-file.ts";
import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { beginning, brief, cutAt, first, msg, row, when, word, wordsIn } from "./phrases.ts";
import type { Room } from "./room.ts";

type Section = ReportSection<Phrase>;

/** What came with the object: each with its date, who vouches, and where the original is. */
export function documentsSection({ file, room }: ReportParts): Section {
  const [shown, more] = first(file.documents, room.documents);
  return {
    id: "documents",
    heading: msg("sections.documents"),
    blocks:
      shown.length === 0
        ? [{ is: "text", says: { key: "objectPages.chain.noDocuments" } }]
        : [
            {
              is: "table",
              caption: msg("documents.caption"),
              head: ["what", "date", "says"].map((column) => msg(`documents.${column}`)),
              rows: shown.map((each, i) => [
                row([
                  row([word("documents", each.kind), brief(each.title, room)], ": "),
                  each.vouchedBy === ""
                    ? ""
                    : { key: "objectPages.vouched", params: { name: brief(each.vouchedBy, room) } },
                  each.keptAt === ""
                    ? ""
                    : { key: "objectPages.keptThere", params: { place: brief(each.keptAt, room) } },
                ]),
                row([when(each.date, each.dateTyped)]),
                each.transcription === ""
                  ? msg("documents.noTranscription", { count: each.scans.length })
                  : transcribed(each.transcription, i, room),
              ]),
            },
            ...more,
          ],
  };
}

/** A document's words, or their beginning and where the whole is. */
function transcribed(text: string, place: number, { texts }: Room): Phrase {
  const cut = cutAt(text, 400 * texts);
  if (cut === text) return text;
  return msg("documents.shortened", { text: cut, words: wordsIn(text), path: transcriptionPath(place) });
}

/** Where the words of a file's n-th document, from 0, stand in the archive. */
export const transcriptionPath = (place: number): string =>
  `documents/transcription-${String(place + 1).padStart(3, "0")}.txt`;

/** Every measure with its tolerance, and which size of the line it makes. */
export function measurementsSection(parts: ReportParts): Section {
  const { file, room } = parts;
  const [shown, more] = first(file.measurements, room.measurements);
  const table: readonly ReportBlock<Phrase>[] =
    shown.length === 0
      ? [{ is: "text", says: { key: "objectPages.measure.none" } }]
      : [
          {
            is: "table",
            caption: msg("measurements.caption"),
            head: ["what", "measure", "tolerance", "how"].map((column) => msg(`measurements.${column}`)),
            rows: shown.map((each) => measurementRow(each, room)),
          },
          ...more,
        ];
  return {
    id: "measurements",
    heading: msg("sections.measurements"),
    blocks: [...table, ...sizeBlocks(parts)],
  };
}

function measurementRow(
  { measured, part, base, amount, within, typed, onScreen, note }: FileMeasurement,
  room: Room,
) {
  const unit = measured === "weight" ? "g" : "mm";
  return [
    row([word("measured", measured), brief(part, room)], ", "),
    msg("measurements.amount", { amount: { figure: amount }, unit }),
    msg("measurements.within", { within: { figure: within }, unit }),
    row([
      base === "no base" ? "" : msg(`measurements.bases.${base}`),
      onScreen
        ? { key: "objectPages.measure.fromScreen" }
        : { key: "objectPages.measure.typedAs", params: { typed: brief(typed, room) } },
      beginning(note, 200, room),
    ]),
  ];
}

function sizeBlocks({ file, sizes, room }: ReportParts): readonly ReportBlock<Phrase>[] {
  const { line } = file;
  if (!line || !sizes) return [];
  return [
    { is: "heading", says: msg("measurements.line") },
    {
      is: "text",
      says: row(
        [
          {
            key: "objectPages.measure.lineSays",
            params: {
              name: brief(line.name, room),
              made: when(line.made),
              sizes: line.sizes.map(({ name }) => name).join(", "),
            },
          },
          brief(line.source, room),
        ],
        " ",
      ),
    },
    {
      is: "points",
      points: sizes.under.map(({ convention, sizes: each, none, best }) => {
        const chance = best ? (each.find(({ size }) => size === best)?.probability ?? 0) : none;
        return msg("measurements.if", {
          convention: { key: `sizesPage.conventions.${convention}` },
          size: best?.name ?? "none",
          share: String(Math.min(99, Math.max(1, Math.round(100 * chance)))),
        });
      }),
    },
    { is: "text", says: { key: `sizesPage.verdicts.${sizes.verdict}` } },
  ];
}

/** What was looked at, what was looked for and is absent, and the state that it is in. */
export function conditionSection({ file, room }: ReportParts): Section {
  const points = checklistOf(file.family).points.map(({ id }) => id);
  const looked = file.observations
    .filter(({ observed }) => observed !== "not examined")
    .toSorted((a, b) => points.indexOf(a.point ?? "") - points.indexOf(b.point ?? ""));
  const [shown, more] = first(looked, room.observations);
  const [noted, moreNoted] = first(file.conditions, room.conditions);
  const conditions = noted.map(({ condition, extent, place, note }) =>
    row([
      {
        key: "objectPages.conditionSays",
        params: {
          condition: word("conditions", condition),
          extent: word("extents", extent),
          place: brief(place, room) || "none",
        },
      },
      beginning(note, 200, room),
    ]),
  );
  return {
    id: "condition",
    heading: msg("sections.condition"),
    blocks: [
      ...(conditions.length > 0
        ? [{ is: "points", points: conditions } as const, ...moreNoted]
        : [{ is: "text", says: { key: "objectPages.noConditions" } } as const]),
      ...(shown.length > 0
        ? [
            {
              is: "table",
              caption: msg("examined.caption"),
              head: ["point", "observed", "value"].map((column) => msg(`examined.${column}`)),
              rows: shown.map((each) => observationRow(each, room)),
            } as const,
            ...more,
          ]
        : []),
    ],
  };
}

function observationRow(
  { point, what, observed, option, value, note }: Observation,
  room: Room,
): readonly Phrase[] {
  const looked = point === null ? null : pointOf(point);
  const chosen = looked?.options.find(({ id }) => id === option)?.says ?? "";
  return [
    looked?.lookFor ?? brief(what, room),
    { key: `objectPages.examine.observed.${observed}` },
    row([chosen, beginning(value, 300, room), beginning(note, 300, room)]),
  ];
}
