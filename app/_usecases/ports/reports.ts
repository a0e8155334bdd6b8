import type { Paper, Report } from "#core/object-files/report/blocks";
import type { Room } from "#core/object-files/report/room";

export type Reports = {
  /**
   * The report in the widest room in which it has no more pages than it may have.
   * @param images bytes by SHA-256; what is missing is left out
   */
  pdf(
    report: (room: Room) => Report<string>,
    images: ReadonlyMap<string, Uint8Array>,
    paper: Paper,
    words: PdfWords,
  ): Promise<Uint8Array>;
  /** With a manifest of the SHA-256 sums of them all. */
  archive(files: readonly ArchivedFile[]): Promise<Uint8Array>;
};

/** A file to be put into an archive. */
type ArchivedFile = { readonly path: string; readonly bytes: Uint8Array };

/** What a PDF says besides the report. */
type PdfWords = {
  readonly page: (page: number, of: number) => string;
};
