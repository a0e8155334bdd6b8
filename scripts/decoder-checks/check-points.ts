import { type DecoderInput, type DecoderName, decode } from "#core/decoding/decoders";
import points from "./check-points.json" with { type: "json" };

/** Where a check's date comes from; `computed` has no source beside the table. */
export type CheckBasis = "published" | "from-memory" | "common-practice" | "computed";
/** One comparison of a decoder's answer with a date. */
export type Check = {
  readonly decoder: DecoderName;
  readonly basis: CheckBasis;
  /** Against a date from outside the table, or against the table itself. */
  readonly against: "outside" | "table";
  readonly passed: boolean;
  readonly what: string;
};

/** A number or mark whose date is known from elsewhere than the decoder's table. */
type CheckPoint = {
  readonly decoder: DecoderName;
  readonly input: DecoderInput;
  readonly date: string;
  /** The year that the decoder must give; else it only must not contradict the date. */
  readonly year?: number;
  /** The decoder must give this very day. */
  readonly exact?: boolean;
  /** The rule by which the decoder must refuse. */
  readonly refused?: string;
  readonly basis: CheckBasis;
};

/** Compares every decoder with dates from outside its table. */
export function checkPoints(): readonly Check[] {
  return (points as unknown as readonly CheckPoint[]).map((point) => {
    const { decoder, basis, input, date } = point;
    return {
      decoder,
      basis,
      against: "outside",
      passed: holds(point),
      what: `${JSON.stringify(input)}: ${date}`,
    };
  });
}

function holds({ decoder, input, date, year, exact, refused }: CheckPoint): boolean {
  const decoded = decode(decoder, input);
  if (refused !== undefined) return !decoded.ok && decoded.error.rule === refused;
  if (!decoded.ok) return false;
  const { statements, alternatives } = decoded.value;
  const notBefore = [...statements, ...alternatives].map(({ edtf }) => edtf.replace(/\/\.\.$/, ""));
  if (exact) return notBefore.includes(date);
  return notBefore.some(
    (from) => from.slice(0, date.length) <= date && (year === undefined || Number(from.slice(0, 4)) === year),
  );
}
