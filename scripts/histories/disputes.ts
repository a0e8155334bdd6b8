import type { Claim } from "#core/review/entry-event";

/** A challenge, with how it can be decided. */
export type Dispute = {
  readonly claim: Claim;
  readonly evidence: string;
  readonly dismissed: string;
  readonly upheld: string;
};

export const DISPUTES: readonly Dispute[] = [
  {
    claim: "wrong period",
    evidence:
      "A piece with this mark lies in a sealed foundation deposit of a house at Lodderham, dated after the end of the period given. The town's builder kept the list.",
    dismissed:
      "The list names a piece of {material}, not the mark on it; nothing ties the two together, and the entry's own reason for the end stands.",
    upheld:
      "The deposit is dated beyond doubt and the mark can be read in the photograph of it. The end of the period has to be argued anew.",
  },
  {
    claim: "wrong maker",
    evidence:
      "The initials are also those of a journeyman who worked on his own account in the same street, and whose bill names goods of {material}.",
    dismissed:
      "The bill proves the journeyman, not the mark. The punch is found beside numbers that only {maker} used.",
    upheld:
      "Either may have used the mark in the first years. The name must be given with the doubt that belongs to it.",
  },
  {
    claim: "not a genuine mark",
    evidence:
      "Three pieces in one sale had the mark with the same flaw, and the {material} under it was bright. I think that they were made to be sold.",
    dismissed:
      "The three pieces of that sale are not those shown here. Whatever they were, the photographs of this entry show honest wear.",
    upheld:
      "Two of the photographs come from that sale, and the flaw is in both. What remains is too little to keep the entry as it was.",
  },
  {
    claim: "photographs of different marks",
    evidence:
      "The first photograph has the frame closed at the top, the last has it open. No wear does that; these are two marks on one page.",
    dismissed:
      "The gap is a fill of dirt, seen as such at a larger scale. One mark, as the reviewers had it.",
    upheld:
      "Two marks they are. The page may keep the one that its description fits; the other photograph belongs elsewhere.",
  },
  {
    claim: "wrong period",
    evidence:
      "The directory of the year before the period begins has the firm already, with the mark drawn in its notice.",
    dismissed:
      "The notice shows the shop's sign, which is older than the mark and differs from it in the frame.",
    upheld:
      "The notice shows the mark. The period begins a few years earlier than the entry says, and its reason must name the notice.",
  },
  {
    claim: "duplicate",
    evidence:
      "I find no difference from the mark on the page that this one is related to; wear explains all that the description makes of it.",
    dismissed:
      "The difference is in the die, not in the wear: it is there in the sharpest impressions of both. Two pages are right.",
    upheld: "Laid over each other the two are one die in two states. One page should tell of both.",
  },
  {
    claim: "rights",
    evidence:
      "The photographer is named, but the album they come from was lent on condition that nothing be published from it.",
    dismissed:
      "The lender's letter of last spring gives leave under the licence stated, with the credit that the entry has.",
    upheld:
      "The condition is on paper and was not lifted. Without those photographs the entry has too little to stand on.",
  },
];

export const APPEALS: readonly string[] = [
  "The decision does not speak of the strongest point: where the piece was found, and by whom.",
  "I ask that others look at the photographs at full size before this is closed for good.",
];

/** Moderators' reasons for letting a decision stand, or for overturning it. */
export const APPEAL_VOTES: Readonly<Record<"let stand" | "overturn", readonly string[]>> = {
  "let stand": [
    "I have looked at each photograph again at full size. What was decided follows from them, and nothing was overlooked.",
    "The appeal repeats the claim without adding to its evidence; the decision answered it, shortly but rightly.",
  ],
  overturn: [
    "The find was not weighed, and it should have been. I would send the revision back so that reviewers can do it.",
  ],
};

export const LOCKED = "Three revisions in a day over one word; closed for a week until tempers are cooler.";
export const UNLOCKED = "The week is over and those concerned have agreed on the wording.";
export const REVISED = "Names the piece that the challenge brought up, and what follows from it.";
