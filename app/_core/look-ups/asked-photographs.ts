import { type FieldError, received } from "../field-error.ts";
import type { Region } from "../photographs/region.ts";
import { fail, ok, type Result } from "../result.ts";

/** Who framed the mark: the person who asked, the network that finds marks, or nobody, and all of the photograph was looked up. */
export type FramedBy = "person" | "proposal" | "nobody";

/** A photograph that a look-up asked with. */
export type AskedPhotograph = {
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  /** In pixels of the image as it is kept. */
  readonly region: Region;
  readonly framedBy: FramedBy;
  /** Which mark of the object it shows, from 1; the first photograph shows mark 1. */
  readonly mark: number;
};

/** Photographs that one look-up may hold, whichever marks they show; and so the most marks it may ask of. */
export const MOST_PHOTOGRAPHS = 6;

/** Is the number of photographs one that a look-up may hold? */
export function checkPhotographCount(count: number): Result<number, FieldError> {
  if (count > MOST_PHOTOGRAPHS)
    return fail({
      field: "photograph",
      rule: "photographs-most",
      received: String(count),
      params: { most: MOST_PHOTOGRAPHS },
    });
  return count > 0 ? ok(count) : fail({ field: "photograph", rule: "image-missing", received: "" });
}

/** Reads which mark a photograph shows, as it was typed; nothing typed is the first mark. */
export function parseMarkNumber(typed: string): Result<number, FieldError> {
  const text = typed.trim();
  const number = text === "" ? 1 : /^\d$/.test(text) ? Number(text) : Number.NaN;
  if (number >= 1 && number <= MOST_PHOTOGRAPHS) return ok(number);
  return fail({
    field: "mark",
    rule: "whole-number",
    received: received(text),
    params: { from: 1, to: MOST_PHOTOGRAPHS },
  });
}

/**
 * Numbers marks anew, without gaps, in the order in which the photographs show them: whatever numbers came in, the
 * first photograph shows mark 1.
 */
export function numberMarks<T extends { readonly mark: number }>(photographs: readonly T[]): readonly T[] {
  const order = [...new Set(photographs.map(({ mark }) => mark))];
  return photographs.map((each) => ({ ...each, mark: order.indexOf(each.mark) + 1 }));
}
