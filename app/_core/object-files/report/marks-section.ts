import type { MarkFound } from "../object-file.ts";
import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { caption, filePhotographs } from "./photographs.ts";
import { first, msg, row, said, word } from "./phrases.ts";

/** Every mark beside the reference that it was matched with. */
export function marksSection(parts: ReportParts): ReportSection<Phrase> {
  const [marks, more] = first(parts.file.marks, 8);
  const none: readonly ReportBlock<Phrase>[] =
    marks.length === 0 ? [{ is: "text", says: msg("noMarks") }] : [];
  return {
    id: "marks",
    heading: msg("sections.marks"),
    blocks: [
      ...none,
      ...marks.flatMap((mark) => markBlocks(mark, parts)),
      ...more,
      ...parts.notices.map((each) => ({ is: "note", says: said("notice", each) }) as const),
    ],
  };
}

function markBlocks(mark: MarkFound, parts: ReportParts): readonly ReportBlock<Phrase>[] {
  const name = parts.file.title;
  const title: Phrase = mark.words || mark.description || { key: "objectPages.aMark" };
  const own = parts.file.photographs.filter(({ of, item }) => of === "mark" && item === mark.id).slice(0, 2);
  const pictures = filePhotographs(own, "small", mark.words || mark.place || name);
  const reference = mark.match ? parts.references[mark.match.entry] : undefined;
  const both = [
    ...pictures.flatMap((block) => (block.is === "photographs" ? block.photographs : [])),
    ...(reference && mark.match
      ? [
          {
            ...{ sha256: reference.sha256, width: reference.width, height: reference.height },
            alt: mark.match.title,
            caption: row([
              msg("reference", { title: mark.match.title }),
              caption(reference.shows, reference.credit),
            ]),
            from: "reference" as const,
          },
        ]
      : []),
  ];
  return [
    { is: "heading", says: title },
    ...(both.length > 0 ? [{ is: "photographs", size: "small", photographs: both } as const] : []),
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
        mark.place === "" ? "" : { key: "objectPages.onPlace", params: { place: mark.place } },
        word("belongings", mark.belongs),
        mark.words === "" ? "" : mark.description,
      ]),
    },
    { is: "text", says: matchPhrase(mark, parts) },
  ];
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
