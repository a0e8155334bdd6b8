import type { Technique } from "#core/entries/vocabulary";
import type { Basis } from "#core/review/vote";

/** A sentence in which somebody gives the reason of a vote; `{words}` in braces are filled with the entry's own. */
export type Reason = {
  readonly text: string;
  readonly basis: Basis;
  /** Techniques that it is true of; all where none is named. */
  readonly of?: readonly Technique[];
  /** What the material's name must contain. */
  readonly in?: string;
};

const STRUCK: readonly Technique[] = ["stamped", "impressed", "incised", "cast", "etched"];
const PRINTED: readonly Technique[] = ["printed", "paper", "painted"];
const SEWN: readonly Technique[] = ["woven", "embroidered"];

const handled = (text: string, of?: readonly Technique[]): Reason => ({
  text,
  basis: "handled the object",
  ...(of ? { of } : {}),
});
const compared = (text: string, of?: readonly Technique[]): Reason => ({
  text,
  basis: "compared photographs",
  ...(of ? { of } : {}),
});
const published = (text: string): Reason => ({ text, basis: "published source" });
const recorded = (text: string): Reason => ({ text, basis: "maker's records" });
const other = (text: string): Reason => ({ text, basis: "other" });

const SUPPORT: readonly Reason[] = [
  handled("I had two pieces with this mark on the bench in May; the edges of the punch are sharp in both.", [
    "stamped",
    "impressed",
  ]),
  handled(
    "Felt with a fingernail, the letters stand in {material} as a struck mark does, with a raised lip all round.",
    ["stamped"],
  ),
  {
    text: "Pressed while the body was soft: the wall behind the mark bulges a little inwards, as it should.",
    basis: "handled the object",
    of: ["impressed"],
    in: "stoneware",
  },
  handled("Cut by a practised hand; the burr is worn off in the same places as on the rest of the surface.", [
    "incised",
  ]),
  handled(
    "The mark rises from the mould with the {material}, and the mould's seam runs past it on one side.",
    ["cast"],
  ),
  handled(
    "Under a glass the bitten ground is even and the margin soft, which no later engraver would take pains over.",
    ["etched"],
  ),
  handled("I own a piece with it. Wear on the mark and wear beside it are of one age.", STRUCK),
  handled(
    "The piece I keep has the mark where the entry puts it ({place}), and a second one measured alike to half a millimetre.",
  ),
  handled(
    "Held to a raking light, the first photograph's nick in the frame is on my piece too: one die, two objects.",
    ["stamped", "impressed", "cast"],
  ),
  handled("The ink lies under the varnish, so it was put on before the object left the works.", [
    "printed",
    "painted",
  ]),
  handled(
    "Paper, paste and the browning of the edge agree with the years given; nothing shines under the lamp.",
    ["paper"],
  ),
  handled("The dots are those of a stone, not of a screen; I counted them on two labels.", [
    "printed",
    "paper",
  ]),
  handled(
    "The label is caught in the seam, and the seam's thread is the one that closes the whole piece.",
    SEWN,
  ),
  handled(
    "Unpicked for cleaning: the back of the ribbon shows the floats cut as a ribbon loom leaves them.",
    ["woven"],
  ),
  handled("Counted twelve stitches to the centimetre in the letters, on three pieces from two houses.", [
    "embroidered",
  ]),
  handled("Took a cast of the mark. Laid over the photograph at one scale, nothing is off.", STRUCK),
  handled("It is fixed with pins of the time, and the holes under it have never held another.", ["applied"]),
  handled(
    "One was in the estate I catalogued last year, unpolished; it agrees in every stroke with the second photograph.",
  ),
  handled("Weighed and measured a piece that bears it; make and weight are those of {maker}'s other work."),
  handled(
    "The colours have faded as the rest of the print has, more to the light than under the rim.",
    PRINTED,
  ),
  compared(
    "The three photographs show one die: the break in the frame is in each, wider in the later ones.",
    ["stamped", "impressed", "cast"],
  ),
  compared(
    "Laid over each other at one scale, the letters fall together; only the depth of the blow differs.",
    STRUCK,
  ),
  compared("I set them beside my own eleven. Spacing, foot of the letters and frame are alike in all."),
  compared("The setting of the lines is the same to the width of a hair; only the paper has moved.", [
    "paper",
    "printed",
  ]),
  compared(
    "Warp and weft run as in the pieces photographed here, and the letters take the same number of threads.",
    SEWN,
  ),
  compared(
    "What the description calls constant is constant: I looked for it in every photograph and found it.",
  ),
  compared("The {emblem} is drawn alike in all of them, down to the one stroke that is too short."),
  compared("Different objects, one hand: the lettering leans by the same two or three degrees."),
  compared("The frame, {frame}, is whole in the first photograph and can be traced in the others."),
  compared("The wording {words} is set as in the other marks of {maker}, with the same gaps."),
  compared(
    "Nothing here that the entries beside it share; the mark can be told from its neighbours by the frame alone.",
  ),
  compared("Worn as it is, the second impression has enough left to follow every line of the first."),
  compared("Scale bars agree within what a lens does; the mark is of one size throughout."),
  compared(
    "The place of the mark, {place}, is the same in each photograph, which a copyist seldom troubles about.",
  ),
  published("{source} has the mark, and its drawing agrees with the photographs line for line."),
  published("The account in {source} gives the same years, and tells where it had them from."),
  published("Read {source} again for this: maker, place and period are as the entry says."),
  published("{source} describes a piece of {material} with this wording. I see no other mark it can mean."),
  published(
    "As {source} has it. The plate there is poor, the photographs here are better evidence than the book.",
  ),
  published("The attribution to {maker} is in {source} and nobody has written against it since."),
  published("{source} names the mark and its place on the object; both fit."),
  published("Period checked against {source}; the later end is the author's reasoning, and it holds."),
  recorded("The books of {maker} that are kept speak of new marks in the first of these years."),
  recorded("I went through the papers of {maker}: the mark is drawn in the margin beside an order."),
  recorded("Price lists of {maker} show the mark from {from} on."),
  recorded("A bill of {maker}'s with the mark at its head is dated within the period given."),
  recorded("Letters of the firm mention the change; it falls where the entry lets the period begin."),
  recorded(
    "The pattern numbers found with this mark run through the books of {maker} for {years}, and stop.",
  ),
  other("The period begins with a reason I can test: {begins} I looked it up, and it is so."),
  other("What ends the period is sound: {ends} Nothing later has been shown to me."),
  other("{years} fits everything I have seen sold with papers, some thirty pieces by now."),
  other(
    "The trade has told this one apart for as long as I have been in it, and for the reasons given here.",
  ),
  other("Material and technique go together: {material} was marked so in that place, and hardly elsewhere."),
  other("I looked for a piece outside {years} for two years and found none."),
  {
    text: "Tested the metal beside the mark; it is what {maker} used, and the mark was there before the polish.",
    basis: "other",
    of: ["stamped", "cast"],
  },
  other("A good entry. It says what it does not know, and claims no more than its photographs bear out."),
  other("The description would let me find the mark without the photographs, which is what I ask of one."),
  other("Two dealers and a museum label it so, each without knowing of the others."),
];

const ABSTAIN: readonly Reason[] = [
  other("I know the maker's later work only and would not be a judge of these years."),
  compared("The photographs are good, but I have nothing of my own to set beside them."),
  other("Attribution sound, I think; of the period I cannot say anything. I abstain."),
  published("{source} is all I know of it, and the entry rests on that already."),
  handled("The only piece I held was worn past reading; I would rather count for nothing here."),
  other("Not my ground: I know {material} of the next town, and the two were often confused by me too."),
];

/** Of voters whose vote does not count, and who vote all the same. */
const APART: readonly Reason[] = [
  handled("I have some of these at home, and say so. The mark is right on every one of them."),
  other("As everybody knows I am not free here; I support it for what the photographs show."),
  compared("Outside of what I was appointed for, but the lettering is so plain that I set down my view."),
  other("My interest is declared. For the record: the years agree with what I have gathered."),
  handled("Mine came with a bill of the time. Take it as a note to those whose votes count."),
];

/** Of voters who come round, once they were answered. */
const CHANGED: readonly Reason[] = [
  other("Answered to my satisfaction; I take my objection back."),
  compared("With the second impression beside the first I see it now, and change my vote."),
  published("I had read the passage wrongly. Support, then."),
  other("The answer settles the years. My earlier doubt stays on record, and that is well."),
];

export const REASONS = {
  support: SUPPORT,
  abstain: ABSTAIN,
  apart: APART,
  changed: CHANGED,
} as const satisfies Readonly<Record<string, readonly Reason[]>>;
