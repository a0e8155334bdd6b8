import type { Report } from "#core/object-files/report/blocks";

export const PAPERS = ["a4", "letter"] as const;
export type Paper = (typeof PAPERS)[number];

/** A file to be put into an archive; its path has no folder but those it names. */
export type ArchivedFile = { readonly path: string; readonly bytes: Uint8Array };

export type Reports = {
  /** @param images bytes by SHA-256; what is missing is left out */
  pdf(
    report: Report<string>,
    images: ReadonlyMap<string, Uint8Array>,
    paper: Paper,
    words: PdfWords,
  ): Promise<Uint8Array>;
  /** With a manifest of the SHA-256 sums of all the others. */
  archive(files: readonly ArchivedFile[]): Promise<Uint8Array>;
};

/** What a PDF says besides the report. */
export type PdfWords = {
  readonly page: (page: number, of: number) => string;
};
