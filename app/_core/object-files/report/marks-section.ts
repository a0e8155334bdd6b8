import type { FilePhotograph, MarkFound } from "../object-file.ts";
import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import { laidBlock } from "./laid-mark.ts";
import type { ReportParts } from "./parts.ts";
import { caption, filePhotographs } from "./photographs.ts";
import { beginning, brief, first, msg, row, said, word } from "./phrases.ts";

/** Every mark beside the reference that it was matched with. */
export function marksSection(parts: ReportParts): ReportSection<Phrase> {
  const [marks, more] = first(parts.file.marks, parts.room.marks);
  const none: readonly ReportBlock<Phrase>[] =
    marks.length === 0 ? [{ is: "text", says: msg("noMarks") }] : [];
  return {
    id: "marks",
    heading: msg("sections.marks"),
    blocks: [
      ...none,
      ...marks.flatMap((mark) => markBlocks(mark, parts)),
      ...more,
      ...parts.notices
        .slice(0, parts.room.remarks)
        .map((each) => ({ is: "note", says: said("notice", each) }) as const),
    ],
  };
}

function markBlocks(mark: MarkFound, parts: ReportParts): readonly ReportBlock<Phrase>[] {
  const { room } = parts;
  const own = parts.file.photographs.filter(({ of, item }) => of === "mark" && item === mark.id);
  const laid = laidBlock(mark, own, parts);
  return [
    { is: "heading", says: titleOf(mark, parts) },
    ...(laid ? [laid] : besides(mark, own, parts)),
    {
      is: "text",
      says: row([
        row(
          [
            { key: `kinds.${mark.kind}` },
            mark.technique === null ? "" : { key: `techniques.${mark.technique}` },
          ],
          ", ",
        ),
        mark.place === "" ? "" : { key: "objectPages.onPlace", params: { place: brief(mark.place, room) } },
        word("belongings", mark.belongs),
        mark.words === "" ? "" : beginning(mark.description, 400, room),
      ]),
    },
    { is: "text", says: matchPhrase(mark, parts) },
  ];
}

/** What stands there, or how it looks, or that it is a mark. */
function titleOf({ words, description }: MarkFound, { room }: ReportParts): Phrase {
  const title = words || description;
  return title === "" ? { key: "objectPages.aMark" } : beginning(title, 160, room);
}

/** The file's own photographs of it, and the reference's. */
function besides(
  mark: MarkFound,
  own: readonly FilePhotograph[],
  { file, references }: ReportParts,
): readonly ReportBlock<Phrase>[] {
  const { match } = mark;
  const pictures = filePhotographs(own.slice(0, 2), "small", mark.words || mark.place || file.title);
  const reference = match && references[mark.id]?.photograph;
  const both = [
    ...pictures.flatMap((block) => (block.is === "photographs" ? block.photographs : [])),
    ...(match && reference
      ? [
          {
            ...{ sha256: reference.sha256, width: reference.width, height: reference.height },
            alt: match.title,
            caption: row([
              msg("reference", { title: match.title }),
              caption(reference.shows, reference.credit),
            ]),
            from: "reference" as const,
          },
        ]
      : []),
  ];
  return both.length > 0 ? [{ is: "photographs", size: "small", photographs: both }] : [];
}

function matchPhrase({ match }: MarkFound, { entries }: ReportParts): Phrase {
  if (!match) return msg("noMatch");
  const today = entries.find(({ slug }) => slug === match.entry);
  return row([
    msg("matched", {
      title: match.title,
      maker: today?.maker?.name ?? "none",
      number: match.revision.number,
      state: today ? { key: `states.${today.state}` } : "none",
    }),
    match.probability === null ? "" : msg("probability", { share: inHundred(match.probability) }),
    match.model === null
      ? { key: "objectPages.match.byHand" }
      : { key: "objectPages.match.model", params: { name: match.model.name, version: match.model.version } },
  ]);
}

/** Never 0 or 100: neither is known. */
function inHundred(probability: number): Phrase {
  return String(Math.min(99, Math.max(1, Math.round(100 * probability))));
}
