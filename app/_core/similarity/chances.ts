import type { Calibration, Curve } from "./calibration.ts";
import { EVIDENCE } from "./evidence.ts";

/** What is known of an entry that may be the answer. */
export type Weighed = {
  readonly entry: string;
  /** Cosine of its best photograph; null for an entry without one. */
  readonly similarity: number | null;
  /** How many photographs it has. */
  readonly photographs: number;
  /** Natural log-odds that a re-ranking network gives the pair; null when none looked at it. */
  readonly pairScore: number | null;
  /** What is known besides the photograph, as natural log-odds for the entry. */
  readonly evidence: number;
  /** Its letters agree without a slip, and are enough of them to mean something. */
  readonly lettersAgree: boolean;
};

export type Chances = {
  /** By entry, the probability that query and entry show the same mark. */
  readonly of: ReadonlyMap<string, number>;
  /** By entry, natural log-odds of the entry against "none of them": answers are ordered by it. */
  readonly odds: ReadonlyMap<string, number>;
  /** The probability that no entry shows it; with those of all entries it sums to 1. */
  readonly none: number;
};

/**
 * How likely each entry is the mark, and how likely that none is: a conditional logit (McFadden, Conditional Logit
 * Analysis of Qualitative Choice Behavior, 1974) in which one of the entries or none is right, so that a second entry
 * nearly as like takes from the first, and all of them together take from "none".
 *
 * "None" grows with the logarithm of how many entries were searched, since with more of them one comes near by chance.
 * @param weighed each entry once; all that were weighed, not only those that are shown
 * @param entries how many were searched
 */
export function chancesOf(
  weighed: readonly Weighed[],
  entries: number,
  { plain, reranked }: Pick<Calibration, "plain" | "reranked">,
): Chances {
  const paired = reranked !== null && weighed.some(({ pairScore }) => pairScore !== null);
  const curve = paired ? reranked : plain;
  const none = noneOdds(curve, entries);
  const share = sharesOf(weighed);
  const odds = new Map(
    weighed.map((each): [string, number] => [
      each.entry,
      photographOdds(each, curve, paired, none, share) + each.evidence,
    ]),
  );
  // The greatest first, so that the sum does not depend on the order in which entries came.
  const sorted = [0, ...odds.values()].sort((a, b) => b - a);
  const greatest = sorted[0] ?? 0;
  const sum = sorted.reduce((total, each) => total + Math.exp(each - greatest), 0);
  const probability = (each: number) => Math.exp(each - greatest) / sum;
  return {
    of: new Map([...odds].map(([entry, each]) => [entry, probability(each)])),
    odds,
    none: probability(0),
  };
}

const noneOdds = ({ none }: Curve, entries: number): number =>
  none.constant + none.entries * Math.log(Math.max(1, entries));

/** Against "none": the fitted log-odds, but agreeing letters keep an entry from sinking out of reach. */
function photographOdds(
  { similarity, photographs, pairScore, lettersAgree }: Weighed,
  curve: Curve,
  paired: boolean,
  none: number,
  share: ReturnType<typeof sharesOf>,
): number {
  const { leastOfPhotograph, withoutPhotograph } = EVIDENCE;
  if (similarity === null) {
    const unread = leastOfPhotograph - share.unseen;
    return lettersAgree ? Math.max(unread, withoutPhotograph - share.agreeing) : unread;
  }
  const pair = pairScore === null ? curve.unpaired : curve.pairScore * pairScore;
  const fitted =
    similarityOdds(curve, similarity) +
    curve.photographs * Math.log(Math.max(1, photographs)) +
    (paired ? pair : 0) -
    none;
  return lettersAgree ? Math.max(fitted, leastOfPhotograph - share.agreeing) : fitted;
}

function similarityOdds({ similarity: { slope, bend, middle } }: Curve, similarity: number): number {
  const turns = bend === 0 ? 0 : -slope / (2 * bend);
  const from = similarity - middle;
  const x = bend > 0 ? Math.max(from, turns) : bend < 0 ? Math.min(from, turns) : from;
  return slope * x + bend * x * x;
}

/** What only letters speak for is shared: with three entries that agree alike, each is a third as likely. */
function sharesOf(weighed: readonly Weighed[]) {
  const log = (each: readonly Weighed[]) => Math.log(Math.max(1, each.length));
  return {
    agreeing: log(weighed.filter(({ lettersAgree }) => lettersAgree)),
    unseen: log(weighed.filter(({ similarity }) => similarity === null)),
  };
}
