import type { Place } from "../../photographs/alignment.ts";
import type { Region } from "../../photographs/region.ts";

/** Words that the interface makes: as they were typed, of a message, of a date, or several in a row. */
export type Phrase =
  | string
  | { readonly key: string; readonly params?: Readonly<Record<string, Phrase | number>> }
  | { readonly edtf: string }
  | { readonly figure: number }
  | { readonly row: readonly Phrase[]; readonly joined: string };

type ReportPhotograph<W> = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly alt: W;
  readonly caption: W;
  /** Where the image lies: in the file, or in the reference that a mark was matched with. */
  readonly from: "file" | "reference";
};

/** The part of a photograph that holds a mark, and numbered places in it. */
type ReportCloseUp<W> = ReportPhotograph<W> & {
  readonly region: Region;
  readonly places: readonly Place[];
};

/** A bar on an axis of years; an end that is open or not known is null. */
export type ReportBar<W> = {
  readonly label: W;
  readonly note: W;
  readonly when: W;
  readonly from: number | null;
  readonly to: number | null;
};

/** How likely each year from `from` on is. */
type ReportCurve = { readonly from: number; readonly likely: readonly number[] };

export type ReportBlock<W> =
  | { readonly is: "lead" | "text" | "quoted" | "note" | "heading"; readonly says: W }
  | { readonly is: "points"; readonly points: readonly W[] }
  | {
      readonly is: "table";
      readonly caption: W;
      readonly head: readonly W[];
      readonly rows: readonly (readonly W[])[];
    }
  | {
      readonly is: "photographs";
      /** One across the page, some beside each other to be compared, or a row that only reminds. */
      readonly size: "large" | "small" | "row";
      readonly photographs: readonly ReportPhotograph<W>[];
    }
  | {
      /** A mark beside its reference with the same places numbered on both, and laid over it. */
      readonly is: "laid";
      readonly own: ReportCloseUp<W>;
      readonly reference: ReportCloseUp<W>;
      readonly over: { readonly alt: W; readonly caption: W };
      /** Nine numbers, row by row, from the own photograph's pixels to the reference's. */
      readonly homography: readonly number[];
    }
  | {
      readonly is: "chart";
      readonly chart: "dates" | "provenance";
      readonly caption: W;
      readonly years: { readonly from: number; readonly to: number };
      readonly curve: ReportCurve | null;
      readonly bars: readonly ReportBar<W>[];
    };

export const REPORT_SECTIONS = [
  "finding",
  "evidence",
  "marks",
  "anomalies",
  "provenance",
  "documents",
  "measurements",
  "condition",
  "citations",
  "versions",
  "cautions",
] as const;
export type ReportSection<W> = {
  readonly id: (typeof REPORT_SECTIONS)[number];
  readonly heading: W;
  readonly blocks: readonly ReportBlock<W>[];
};

export type Report<W> = {
  readonly title: W;
  readonly language: string;
  readonly subtitle: W;
  readonly sections: readonly ReportSection<W>[];
};

/** Everything that it holds, one after the other. */
export const blocksOf = <W>({ sections }: Report<W>): readonly ReportBlock<W>[] =>
  sections.flatMap(({ blocks }) => blocks);

/** The photographs that it shows. */
export function photographsOf<W>(report: Report<W>): readonly ReportPhotograph<W>[] {
  return blocksOf(report).flatMap((block) =>
    block.is === "photographs" ? block.photographs : block.is === "laid" ? [block.own, block.reference] : [],
  );
}

/** The same report with other words: how phrases become sentences. */
export function mapReport<A, B>(report: Report<A>, say: (words: A) => B): Report<B> {
  return {
    title: say(report.title),
    language: report.language,
    subtitle: say(report.subtitle),
    sections: report.sections.map(({ id, heading, blocks }) => ({
      id,
      heading: say(heading),
      blocks: blocks.map((block) => mapBlock(block, say)),
    })),
  };
}

function mapBlock<A, B>(block: ReportBlock<A>, say: (words: A) => B): ReportBlock<B> {
  switch (block.is) {
    case "points":
      return { ...block, points: block.points.map(say) };
    case "table":
      return {
        ...block,
        caption: say(block.caption),
        head: block.head.map(say),
        rows: block.rows.map((row) => row.map(say)),
      };
    case "photographs":
      return { ...block, photographs: block.photographs.map((each) => mapPhotograph(each, say)) };
    case "laid":
      return {
        ...block,
        own: mapPhotograph(block.own, say),
        reference: mapPhotograph(block.reference, say),
        over: mapPhotograph(block.over, say),
      };
    case "chart":
      return {
        ...block,
        caption: say(block.caption),
        bars: block.bars.map((bar) => ({
          ...bar,
          label: say(bar.label),
          note: say(bar.note),
          when: say(bar.when),
        })),
      };
    default:
      return { is: block.is, says: say(block.says) };
  }
}

/** Anything with a caption and the words for who cannot see it. */
function mapPhotograph<A, B, P extends { readonly alt: A; readonly caption: A }>(
  photograph: P,
  say: (words: A) => B,
): Omit<P, "alt" | "caption"> & { readonly alt: B; readonly caption: B } {
  return { ...photograph, alt: say(photograph.alt), caption: say(photograph.caption) };
}

/** What a report can be printed on. */
export const PAPERS = ["a4", "letter"] as const;
export type Paper = (typeof PAPERS)[number];
