import { decode, type Patch } from "../preprocess.ts";
import { type Answered, answer, weigh } from "./chances.ts";
import type { featureFile } from "./features.ts";
import type { Sample } from "./folders.ts";
import type { Method } from "./method.ts";
import { areaUnderRoc, averagePrecision, mean, median, recallAt } from "./metrics.ts";
import { comparePairs, type Seen } from "./pairs.ts";
import { compare, type Known, type RankedClass, rankTogether } from "./rank.ts";
import { type Bin, expectedCalibrationError, type Judged, reliability } from "./reliability.ts";
import type { Rerank } from "./verified.ts";

/** What one method reaches on one pair of folders. */
export type Figures = {
  readonly references: number;
  readonly classes: number;
  /** Photographs, or with several of a mark together, marks. */
  readonly queries: number;
  readonly recall1: number;
  readonly recall5: number;
  readonly recall10: number;
  readonly map: number;
  /**
   * Expected calibration error, in 15 bins, of the probability that the first class is the right one, over queries
   * and absent marks; null for a method that gives none.
   */
  readonly ece: number | null;
  /**
   * Present against absent marks by the probability that some class fits, or by their best similarity for a method
   * that gives none; null when there were no absent ones.
   */
  readonly auroc: number | null;
  /** From the encoded photographs of a query to the ranked classes. */
  readonly medianMs: number;
};

/** What probabilities came to: beside the figures, since those have names that others rely on. */
export type Calibrated = {
  /** Expected calibration error of the probability that no class fits. */
  readonly eceNone: number;
  /** Of the first class's probability. */
  readonly reliability: readonly Bin[];
};

export type Progress = (what: string, done: number, of: number) => void;

/** Photographs that are asked together, of one class. */
export type Query = { readonly label: string; readonly paths: readonly string[] };

/** Each photograph by itself. */
export const oneByOne = (samples: readonly Sample[]): readonly Query[] =>
  samples.map(({ label, path }) => ({ label, paths: [path] }));

/** All photographs of a class as several photographs of one mark; those of no class stay by themselves. */
export function together(samples: readonly Sample[]): readonly Query[] {
  const classes = new Map<string, string[]>();
  for (const { label, path } of samples) {
    const key = label === "" ? path : label;
    classes.set(key, [...(classes.get(key) ?? []), path]);
  }
  return [...classes].map(([label, paths]) => ({ label, paths }));
}

type Options = {
  /** Puts each query's best classes into another order; what comes out has no probabilities. */
  readonly rerank?: Rerank;
  /** Gets what probabilities are fitted on. */
  readonly features?: (known: readonly Known[]) => ReturnType<typeof featureFile>;
};

/**
 * Runs a method over references, queries and photographs of absent marks. A class is as similar as the best of
 * its references in the best direction of the query; ties are broken by the name of the class. What several
 * photographs of a query say is combined as a look-up combines it.
 * @throws Error naming the photograph that cannot be read
 */
export async function measure(
  method: Method,
  references: readonly Sample[],
  queries: readonly Query[],
  absent: readonly Query[],
  progress: Progress,
  { rerank, features }: Options = {},
): Promise<Figures & { readonly calibrated: Calibrated | null }> {
  const known: Known[] = [];
  for (const [i, { label, path }] of references.entries()) {
    known.push({ label, described: await method.reference(await read(path)) });
    progress(`${method.name}: references`, i + 1, references.length);
  }
  const classes = new Set(known.map(({ label }) => label)).size;
  const written = features?.(known);
  await written?.begin(method.name);
  const ask = async ({ paths }: Query, label: string | null): Promise<Answer> => {
    const before = performance.now();
    const seen: Seen[] = [];
    for (const path of paths) {
      const described = await method.query(await read(path));
      seen.push({ described, similarities: compare(described, known) });
    }
    const similarities = seen.map((each) => each.similarities);
    const ranking = rankTogether(similarities, known);
    const pairScores = method.judge && !rerank ? await comparePairs(seen, known, method.judge) : undefined;
    const chances =
      method.calibration && !rerank
        ? answer(weigh(similarities, known, pairScores), classes, method.calibration)
        : null;
    const ranked = rerank ? await rerank(paths[0] ?? "", ranking) : reordered(ranking, chances);
    const ms = performance.now() - before;
    for (const [i, each] of seen.entries())
      await written?.write({ query: paths[i] ?? "", label, seen: each, judge: method.judge });
    return { ranking: ranked, chances, right: label, ms };
  };
  const present: Answer[] = [];
  for (const [i, query] of queries.entries()) {
    present.push(await ask(query, query.label));
    progress(`${method.name}: queries`, i + 1, queries.length);
  }
  const strangers: Answer[] = [];
  for (const [i, query] of absent.entries()) {
    strangers.push(await ask(query, null));
    progress(`${method.name}: absent`, i + 1, absent.length);
  }
  return {
    ...figuresOf(known.length, classes, present, strangers),
    calibrated: calibratedOf([...present, ...strangers]),
  };
}

type Answer = {
  readonly ranking: readonly RankedClass[];
  readonly chances: Answered | null;
  /** Null for a mark that no reference shows. */
  readonly right: string | null;
  readonly ms: number;
};

/** The likeliest classes first, then those that were not weighed. */
function reordered(ranking: readonly RankedClass[], chances: Answered | null): readonly RankedClass[] {
  if (!chances) return ranking;
  const place = new Map(chances.labels.map((label, i) => [label, i]));
  const at = ({ label }: RankedClass) => place.get(label) ?? chances.labels.length;
  return [...ranking].sort((a, b) => at(a) - at(b));
}

function figuresOf(
  references: number,
  classes: number,
  present: readonly Answer[],
  absent: readonly Answer[],
): Figures {
  const ranks = present.map(({ ranking, right }) => 1 + ranking.findIndex(({ label }) => label === right));
  const precisions = present.map(({ ranking, right }) =>
    averagePrecision(
      ranking.map(({ label }) => label === right),
      1,
    ),
  );
  const someFits = ({ ranking, chances }: Answer) =>
    chances ? 1 - chances.none : (ranking[0]?.similarity ?? Number.NaN);
  const first = firsts([...present, ...absent]);
  return {
    references,
    classes,
    queries: present.length,
    recall1: recallAt(1, ranks),
    recall5: recallAt(5, ranks),
    recall10: recallAt(10, ranks),
    map: mean(precisions),
    ece: first.length > 0 ? expectedCalibrationError(first) : null,
    auroc: absent.length > 0 ? areaUnderRoc(present.map(someFits), absent.map(someFits)) : null,
    medianMs: median(present.map(({ ms }) => ms)),
  };
}

function calibratedOf(answers: readonly Answer[]): Calibrated | null {
  const first = firsts(answers);
  if (first.length === 0) return null;
  const none = answers.flatMap(({ chances, right }) =>
    chances ? [{ probability: chances.none, right: right === null }] : [],
  );
  return { eceNone: expectedCalibrationError(none), reliability: reliability(first) };
}

/** "The first is the right one"; never so of a mark that no reference shows. */
const firsts = (answers: readonly Answer[]): readonly Judged[] =>
  answers.flatMap(({ chances, ranking, right }) =>
    chances ? [{ probability: chances.first, right: ranking[0]?.label === right }] : [],
  );

async function read(path: string): Promise<Patch> {
  return decode(path).catch((cause: unknown) => {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`${path}: must be a photograph that can be decoded. Received: ${why}`, { cause });
  });
}
