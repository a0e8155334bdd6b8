import type { FilePhotograph } from "../object-file.ts";
import type { Phrase, ReportBlock } from "./blocks.ts";
import { msg, row } from "./phrases.ts";

/** Photographs of the file with their credit; none where there is none. */
export function filePhotographs(
  photographs: readonly FilePhotograph[],
  size: "large" | "small" | "row",
  title: string,
): readonly ReportBlock<Phrase>[] {
  if (photographs.length === 0) return [];
  return [
    {
      is: "photographs",
      size,
      photographs: photographs.map(({ sha256, width, height, shows, credit }) => ({
        ...{ sha256, width, height },
        alt: shows || title,
        caption: caption(shows, credit),
        from: "file" as const,
      })),
    },
  ];
}

export function caption(shows: string, credit: string): Phrase {
  return row([shows, credit === "" ? "" : msg("credit", { credit })]);
}
