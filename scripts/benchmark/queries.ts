import { photographQuery } from "./draw-marks.ts";
import { marksIn, slugOf } from "./reference-folder.ts";

/** A photograph to look up, the box that the mark is in, and the entry that it should find. */
export type Query = {
  readonly bytes: Buffer<ArrayBuffer>;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly slug: string;
};

/** Photographs of marks spread evenly over those that a number of reference photographs shows. */
export async function drawQueries(count: number, photographs: number): Promise<readonly Query[]> {
  const queries: Query[] = [];
  for (let i = 0; i < count; i++) {
    const mark = Math.floor((i * marksIn(photographs)) / count);
    const { bytes, box } = await photographQuery(mark);
    queries.push({ bytes: Buffer.from(bytes), box, slug: slugOf(mark) });
  }
  return queries;
}
