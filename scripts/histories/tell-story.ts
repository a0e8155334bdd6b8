import type { ActingMember } from "#core/members/member";
import { LOCKED, REVISED, UNLOCKED } from "./disputes.ts";
import type { Cast } from "./people.ts";
import type { Fate, Step } from "./story.ts";
import { appeals, appealVotes, challenges, decides, drawId, type Raised } from "./tell-dispute.ts";
import { inOrder, lapses, OPEN, verifies, waits } from "./tell-review.ts";
import { closes, type Setting, votes } from "./vote-in-story.ts";

const DAY = 24;

/** How long ago an entry of each fate was submitted, in days: at least, at most. */
export const AGES: Readonly<Record<Fate, readonly [number, number]>> = {
  verified: [32, 725],
  "under review": [0.3, 27],
  disputed: [90, 720],
  dismissed: [150, 720],
  "sent back": [200, 720],
  "upheld in part": [150, 720],
  appealed: [200, 720],
  "appeal waiting": [120, 600],
  "not accepted": [40, 720],
  superseded: [150, 720],
  withdrawn: [150, 720],
  "locked for a week": [120, 500],
};

type Scene = {
  readonly setting: Setting;
  readonly cast: Cast;
  readonly fate: Fate;
  /** Hours since the entry was submitted. */
  readonly age: number;
  /** Slug of the entry that stands instead, for one that is superseded. */
  readonly instead: string;
};

/** What happens to an entry, from its submission on. */
export function tellStory({ setting, cast, fate, age, instead }: Scene): readonly Step[] {
  if (fate === "under review") return waits(setting, cast, age);
  if (fate === "not accepted") return lapses(setting, cast);
  if (fate === "verified") return verifies(setting, cast, cast.reviewers.slice(0, votersOf(setting, cast)));
  // Moderators decide later, so they leave the votes to others.
  const verified = verifies(setting, cast, cast.reviewers.slice(0, 3));
  return [...verified, ...sequel({ setting, cast, fate, age, instead })];
}

const votersOf = ({ random }: Setting, { reviewers }: Cast): number =>
  Math.min(reviewers.length, random.pick([3, 3, 3, 4, 4, 5]));

function sequel({ setting, cast, fate, age, instead }: Scene): readonly Step[] {
  const { random } = setting;
  const [challenger, author] = cast.contributors;
  const free = cast.moderators.filter((each) => !cast.reviewers.slice(0, 3).includes(each));
  const [decider] = free;
  if (!challenger || !author || !decider) throw new Error(`${fate}: too few members are free for it.`);
  if (fate === "disputed")
    return [challenges(setting, challenger, age - random.between(2, 40) * DAY, ANY).step];
  if (fate === "locked for a week") return locked(setting, free, age);
  const begun = fate === "appeal waiting" ? age - 30 * DAY : random.between(34 * DAY, age - 90 * DAY);
  const decided = begun + random.between(3, 15) * DAY;
  if (fate === "withdrawn") {
    const raised = challenges(setting, challenger, begun, ["not a genuine mark", "rights"]);
    return [raised.step, decides(setting, decider, decided, raised, "upheld", () => ({ kind: "withdrawn" }))];
  }
  if (fate === "superseded") {
    const raised = challenges(setting, challenger, begun, ["duplicate"]);
    const follows = () => ({ kind: "superseded", entry: instead }) as const;
    return [raised.step, decides(setting, decider, decided, raised, "upheld", follows)];
  }
  if (fate === "sent back") return sentBack(setting, cast, age, { challenger, author, decider });
  const raised = challenges(setting, challenger, begun, ANY);
  const ruling = fate === "upheld in part" ? "upheld in part" : "dismissed";
  const decision = decides(setting, decider, decided, raised, ruling, () => ({ kind: "no change" }));
  if (fate !== "appealed" && fate !== "appeal waiting") return [raised.step, decision];
  return [
    raised.step,
    decision,
    ...appealed(setting, { challenger, judges: free.slice(1), decided, raised, fate, age }),
  ];
}

const ANY = ["wrong period", "wrong maker", "not a genuine mark", "photographs of different marks"] as const;

function appealed(
  setting: Setting,
  given: {
    readonly challenger: ActingMember;
    readonly judges: readonly ActingMember[];
    readonly decided: number;
    readonly raised: Raised;
    readonly fate: Fate;
    readonly age: number;
  },
): readonly Step[] {
  const { challenger, judges, decided, raised, fate, age } = given;
  const after = decided + 4 * DAY;
  if (fate === "appealed")
    return [
      appeals(setting, challenger, after, raised),
      ...appealVotes(judges, after + 2 * DAY, raised, ["overturn", "let stand", "let stand"]),
    ];
  return [
    appeals(setting, challenger, age - 5 * DAY, raised),
    ...appealVotes(judges, age - 2 * DAY, raised, ["let stand"]),
  ];
}

/** Challenged not long ago; somebody wrote a new revision, which a moderator let be reviewed in place of the old. */
function sentBack(
  setting: Setting,
  { reviewers }: Cast,
  age: number,
  { challenger, author, decider }: Readonly<Record<"challenger" | "author" | "decider", ActingMember>>,
): readonly Step[] {
  const { random, subject } = setting;
  const isOver = random.chance(0.4);
  const written = isOver ? age - random.between(40, 80) * DAY : age - random.between(5, 20) * DAY;
  const raised = challenges(setting, challenger, written - 3 * DAY, ["wrong period", "wrong maker"]);
  const description = `${subject.content.description} A piece put forward in a challenge is weighed under the period.`;
  const [first, second, third] = reviewers;
  if (!first || !second || !third) throw new Error("sent back: it takes three reviewers.");
  const decided = written + DAY;
  const voted = [
    votes(setting, first, decided + 20),
    ...(isOver ? [votes(setting, second, decided + 40)] : []),
  ];
  return inOrder([
    raised.step,
    {
      is: "revision",
      after: written,
      by: author,
      content: { ...subject.content, description },
      summary: REVISED,
    },
    decides(setting, decider, decided, raised, "upheld in part", (revision) => ({
      kind: "new revision to review",
      revision,
    })),
    ...voted,
    ...(isOver ? [votes(setting, third, decided + OPEN + 30), closes(decided + OPEN + 31)] : []),
  ]);
}

function locked({ random }: Setting, [one, other]: readonly ActingMember[], age: number): readonly Step[] {
  if (!one || !other) throw new Error("locked: it takes two moderators.");
  const act = drawId(random);
  const after = age - 60 * DAY;
  return [
    { is: "command", after, give: (at) => ({ type: "lock", at, by: one, act, reason: LOCKED }) },
    {
      is: "command",
      after: after + 7 * DAY,
      give: (at) => ({ type: "undo an act", at, by: other, act, reason: UNLOCKED }),
    },
  ];
}
