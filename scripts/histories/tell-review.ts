import type { ActingMember } from "#core/members/member";
import type { Cast } from "./people.ts";
import type { Step } from "./story.ts";
import { closes, opposes, type Setting, votes } from "./vote-in-story.ts";

/** Hours that a review is open at least, and after which it is over. */
export const OPEN = 72;
const OVER = 30 * 24;
/** Hours by which a story's time may move: nobody writes at night. */
const NIGHT = 14;

/** The first reviews of entries: verified, waiting, not accepted. Each begins when the entry is submitted. */

/** A review that ends as verified; some in three days, some after weeks. */
export function verifies(setting: Setting, cast: Cast, voters: readonly ActingMember[]): readonly Step[] {
  const { random } = setting;
  if (voters.length === 3 && random.chance(0.4)) return slowly(setting, cast, voters);
  const times = spread(setting, voters.length, 2, OPEN - 20);
  const opposed = voters.length > 3 && random.chance(0.45) ? voters.length - 2 : -1;
  const abstained = voters.length > 3 && opposed < 0 && random.chance(0.7) ? 1 : -1;
  const steps = voters.flatMap((voter, i): readonly Step[] => {
    const after = times[i] ?? 2;
    if (i === abstained) return [votes(setting, voter, after, "abstain")];
    if (i !== opposed) return [votes(setting, voter, after)];
    const by = voters.find((each) => each !== voter) ?? voter;
    const doubt = opposes(setting, voter, after, { by, after: after + 3 });
    return random.chance(0.3) ? [...doubt, votes(setting, voter, after + 9, "changed")] : doubt;
  });
  return inOrder([...steps, ...noted(setting, cast, OPEN - 30, 0.5), closes(OPEN + random.between(0.1, 1))]);
}

/** Three votes, the third after the shortest time: with it the review closes. */
function slowly(setting: Setting, cast: Cast, voters: readonly ActingMember[]): readonly Step[] {
  const { random } = setting;
  const [first, second, third] = voters;
  if (!first || !second || !third) throw new Error("voters: it takes three. Received fewer.");
  const last = random.between(OPEN + 30, OVER - 100);
  const doubt = random.chance(0.3)
    ? opposes(setting, first, 20, { by: second, after: last - 12 })
    : [votes(setting, first, random.between(5, 60))];
  return inOrder([
    ...doubt,
    votes(setting, second, random.between(40, last - 20)),
    ...noted(setting, cast, last - 6, 0.4),
    votes(setting, third, last),
  ]);
}

/** A review that is still open at an age: nobody came yet, or somebody doubts, or too few spoke. */
export function waits(setting: Setting, cast: Cast, age: number): readonly Step[] {
  const { random } = setting;
  const [first, second, third] = cast.reviewers;
  const most = Math.min(age - NIGHT, OVER - 60);
  if (!first || !second || !third || most < 8 || random.chance(0.25)) return [];
  const early = random.between(2, most / 2);
  const late = random.between(most / 2, most);
  const opposed = random.chance(0.4);
  if (opposed) {
    const answered = random.chance(0.5) ? { by: second, after: (early + late) / 2 } : null;
    return inOrder([...opposes(setting, first, early, answered), votes(setting, second, late)]);
  }
  const two = [votes(setting, first, early), ...(random.chance(0.6) ? [votes(setting, second, late)] : [])];
  // Three votes are enough once the shortest time is over: one that abstains twice is none for it.
  const three = age < OPEN - NIGHT && random.chance(0.7) ? [votes(setting, third, most)] : [];
  return inOrder([...two, ...noted(setting, cast, late, 0.5), ...three]);
}

/** A review that nothing came of: nobody had the time, or more were against it. */
export function lapses(setting: Setting, cast: Cast): readonly Step[] {
  const { random } = setting;
  const [first, second, third] = cast.reviewers;
  if (!first) return [];
  const asked = random.between(8, 200);
  const steps: Step[] = [...opposes(setting, first, asked, null)];
  if (second && random.chance(0.85)) steps.push(...opposes(setting, second, random.between(210, 400), null));
  if (third && random.chance(0.7)) steps.push(votes(setting, third, random.between(410, 600)));
  // The days of what was imported count from its first vote, which may have been cast some hours later.
  return [...steps, closes(asked + OVER + 24 + random.between(0.2, 2))];
}

/** A vote that does not count, by somebody with an interest or of another field. */
function noted(setting: Setting, { apart }: Cast, after: number, chance: number): readonly Step[] {
  const [one] = apart;
  const interested =
    one?.interests.some(({ in: { slug } }) => slug === setting.subject.content.maker) ?? false;
  return one && setting.random.chance(interested ? chance : 0.04)
    ? [votes(setting, one, after, "apart")]
    : [];
}

export const inOrder = (steps: readonly Step[]): readonly Step[] =>
  [...steps].sort((a, b) => a.after - b.after);

function spread({ random }: Setting, count: number, from: number, to: number): readonly number[] {
  return Array.from({ length: count }, () => random.between(from, to)).sort((a, b) => a - b);
}
