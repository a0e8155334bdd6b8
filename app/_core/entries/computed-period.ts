import { widened } from "../dates/circa-policy.ts";
import type { Interval } from "../dates/interval.ts";
import { parseInterval } from "../dates/parse.ts";
import type { Citation } from "./citation.ts";
import type { DatedSaying } from "./vocabulary.ts";

/** A citation that dates the use of a mark. */
type DatedPiece = { readonly citation: Citation; readonly interval: Interval; readonly says: DatedSaying };

/** Where a dated piece and the stated period cannot both be right. */
type Disagreement = {
  readonly citation: Citation;
  readonly is: "used before" | "used after" | "begins too early" | "ends too late";
};

export type ComputedPeriod = {
  /** How many dated pieces it is computed from. */
  readonly pieces: number;
  /** From the first year in which a piece shows the mark in use to the last: it was used so long at least. */
  readonly shown: Interval | null;
  /** The latest year that a piece says it was not used before, and the earliest that it was not used after. */
  readonly notBefore: number | null;
  readonly notAfter: number | null;
  readonly disagreements: readonly Disagreement[];
  /** Pairs of pieces of which one shows a use that the other rules out. */
  readonly contradictions: readonly (readonly [Citation, Citation])[];
};

/**
 * What the dated citations of an entry say of its period of use: no guess how much longer the mark was used than they
 * show. Null when nothing is dated.
 */
export function computePeriod(
  citations: readonly Citation[],
  stated: Interval | null,
): ComputedPeriod | null {
  const pieces = citations.flatMap((citation): DatedPiece[] => {
    const read = citation.dated && parseInterval(citation.dated.edtf);
    return citation.dated && read?.ok ? [{ citation, interval: read.value, says: citation.dated.says }] : [];
  });
  if (pieces.length === 0) return null;
  const that = (says: DatedSaying) => pieces.filter((piece) => piece.says === says);
  const [uses, befores, afters] = [that("in use"), that("not before"), that("not after")];
  return {
    pieces: pieces.length,
    shown: spanOf(uses),
    notBefore: outermost(Math.max, befores, "earliest"),
    notAfter: outermost(Math.min, afters, "latest"),
    disagreements: stated ? disagreements(stated, uses, befores, afters) : [],
    contradictions: uses.flatMap((use) => [
      ...befores
        .filter((bound) => isBefore(use.interval, bound.interval))
        .map((bound) => [use.citation, bound.citation] as const),
      ...afters
        .filter((bound) => isBefore(bound.interval, use.interval))
        .map((bound) => [use.citation, bound.citation] as const),
    ]),
  };
}

function outermost(
  choose: (...years: number[]) => number,
  pieces: readonly DatedPiece[],
  edge: "earliest" | "latest",
): number | null {
  const years = pieces.map(({ interval }) => interval[edge]).filter((year) => year !== null);
  return years.length === 0 ? null : choose(...years);
}

function spanOf(uses: readonly DatedPiece[]): Interval | null {
  const [from, to] = [outermost(Math.min, uses, "earliest"), outermost(Math.max, uses, "latest")];
  if (from === null && to === null) return null;
  const text = (year: number | null) =>
    year === null ? ".." : `${year < 0 ? "-" : ""}${String(Math.abs(year)).padStart(4, "0")}`;
  const read = parseInterval(from === to ? text(from) : `${text(from)}/${text(to)}`);
  return read.ok ? read.value : null;
}

/** Is one over before the other begins, whatever "about" allows? */
function isBefore(sooner: Interval, later: Interval): boolean {
  const { softTo } = widened(sooner);
  const { softFrom } = widened(later);
  return softTo !== null && softFrom !== null && softTo <= softFrom;
}

function disagreements(
  stated: Interval,
  uses: readonly DatedPiece[],
  befores: readonly DatedPiece[],
  afters: readonly DatedPiece[],
): readonly Disagreement[] {
  const { softFrom, softTo } = widened(stated);
  const named = (pieces: readonly DatedPiece[], is: Disagreement["is"]) =>
    pieces.map(({ citation }) => ({ citation, is }));
  const begins = ({ interval }: DatedPiece) => widened(interval).softFrom;
  const ends = ({ interval }: DatedPiece) => widened(interval).softTo;
  return [
    ...named(
      uses.filter(({ interval }) => isBefore(interval, stated)),
      "used before",
    ),
    ...named(
      uses.filter(({ interval }) => isBefore(stated, interval)),
      "used after",
    ),
    ...named(
      befores.filter((piece) => isLess(edgeOf(stated, "start", softFrom), begins(piece))),
      "begins too early",
    ),
    ...named(
      afters.filter((piece) => isLess(ends(piece), edgeOf(stated, "end", softTo))),
      "ends too late",
    ),
  ];
}

/** An end that is stated to be open lies as far as can be; one that is not known lies nowhere. */
function edgeOf(stated: Interval, end: "start" | "end", edge: number | null): number | null {
  if (!stated[end].open) return stated[end].about || stated[end].perhaps ? null : edge;
  return end === "start" ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
}

const isLess = (a: number | null, b: number | null): boolean => a !== null && b !== null && a < b;
