import { type Interval, overlaps } from "../dates/interval.ts";
import { EVIDENCE } from "./evidence.ts";

/** An entry of a known maker, as an answer to one mark. */
export type MakersEntry = {
  readonly maker: string;
  readonly mark: number;
  readonly entry: string;
  /** Natural log-odds that it is the mark, as `fuse` adds them up. */
  readonly score: number;
  /** Its likeness is more than little, its letters agree, or nothing is nearer to the mark: else it answers nothing. */
  readonly comesNear: boolean;
};

/** A maker of whom several entries answer several marks, each another one. */
export type MakerAnswers = {
  readonly maker: string;
  readonly answers: readonly MakersEntry[];
  /** The log-odds of all marks added up. Orders; not calibrated. */
  readonly score: number;
};

/**
 * Makers that have entries like at least two marks of one object, likeliest first; ties are broken by maker.
 *
 * Marks are taken as independent evidence, so that their log-odds add up. A mark that no entry of the maker comes near
 * speaks against the maker as much as a photograph ever does. An entry answers one mark only: taken in the order of
 * their scores, each goes to the mark it fits best that is still without one.
 * @param entries those of any makers, for any marks, in any order
 * @param marks how many marks were asked of
 * @returns at most `limit`
 */
export function rankMakers(
  entries: readonly MakersEntry[],
  marks: number,
  limit: number,
): readonly MakerAnswers[] {
  const byMaker = new Map<string, MakersEntry[]>();
  for (const each of entries)
    if (each.comesNear) byMaker.set(each.maker, [...(byMaker.get(each.maker) ?? []), each]);
  return [...byMaker]
    .map(([maker, own]): MakerAnswers => {
      const answers = assign(own);
      const unanswered = (marks - answers.length) * EVIDENCE.leastOfPhotograph;
      const score = answers.reduce((sum, each) => sum + each.score, unanswered);
      return { maker, answers, score };
    })
    .filter(({ answers }) => answers.length > 1)
    .sort((a, b) => b.score - a.score || (a.maker < b.maker ? -1 : 1))
    .slice(0, limit);
}

/** Gives each mark an entry of its own, the best scores first. */
function assign(own: readonly MakersEntry[]): readonly MakersEntry[] {
  const taken: MakersEntry[] = [];
  const byScore = [...own].sort(
    (a, b) => b.score - a.score || a.mark - b.mark || (a.entry < b.entry ? -1 : 1),
  );
  for (const each of byScore)
    if (!taken.some(({ mark, entry }) => mark === each.mark || entry === each.entry)) taken.push(each);
  return taken.sort((a, b) => a.mark - b.mark);
}

/** What speaks against a maker of several marks. */
export type AgainstMaker =
  /** None of its entries comes near this mark. */
  | { readonly why: "nothing-near"; readonly mark: number }
  /** An entry of another maker, or of none, comes nearer to this mark. */
  | { readonly why: "other-nearer"; readonly mark: number; readonly slug: string; readonly title: string }
  /** Its two marks were not in use in the same years. */
  | { readonly why: "periods-apart"; readonly marks: readonly [number, number] };

type AnswerAgainst = { readonly mark: number; readonly entry: { readonly period: Interval | null } };
type FirstOfMark = {
  readonly mark: number;
  /** The entry that stands first in the ranking of the mark; null when there is none. */
  readonly entry: { readonly slug: string; readonly title: string; readonly maker: string | null } | null;
};

/** What speaks against a maker, mark by mark, and then what its marks say of one another. */
export function againstMaker(
  maker: string,
  answers: readonly AnswerAgainst[],
  firsts: readonly FirstOfMark[],
): readonly AgainstMaker[] {
  const ofMarks = firsts.flatMap(({ mark, entry }): AgainstMaker[] => {
    if (!answers.some((each) => each.mark === mark)) return [{ why: "nothing-near", mark }];
    if (!entry || entry.maker === maker) return [];
    return [{ why: "other-nearer", mark, slug: entry.slug, title: entry.title }];
  });
  const apart = answers.flatMap((a, i) =>
    answers.slice(i + 1).flatMap((b): AgainstMaker[] => {
      const [one, other] = [a.entry.period, b.entry.period];
      return one && other && !overlaps(one, other) ? [{ why: "periods-apart", marks: [a.mark, b.mark] }] : [];
    }),
  );
  return [...ofMarks, ...apart];
}
