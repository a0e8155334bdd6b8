import type { Technique } from "#core/entries/vocabulary";
import type { Reason } from "./reasons.ts";

/** The reason of an opposing vote, and what can be answered to it. */
export type Objection = Reason & { readonly answer: string };

const STRUCK: readonly Technique[] = ["stamped", "impressed", "incised", "cast", "etched"];

export const OBJECTIONS: readonly Objection[] = [
  {
    text: "The later end of the period is too late by some years; I have not seen one after the change of material.",
    basis: "other",
    answer:
      "The entry gives what ends the period in so many words. A piece that nobody has seen is no argument against it.",
  },
  {
    text: "The second photograph may show another die: the space before the last letter is wider.",
    basis: "compared photographs",
    of: STRUCK,
    answer: "Measured on both: the difference is less than the lens makes at the edge of the picture.",
  },
  {
    text: "I miss what tells this mark from its neighbour; as it stands, somebody will take the one for the other.",
    basis: "compared photographs",
    answer:
      "The frame is described, and the neighbour's page names this one. Better wording may come with a later revision.",
  },
  {
    text: "Attributed to {maker} by habit. Nothing shown here ties the mark to that name.",
    basis: "published source",
    answer:
      "The place on the object and the numbers beside it are those of signed pieces; so the name rests on objects.",
  },
  {
    text: "The wear in the first photograph looks made, not grown. I would not build an entry on that piece.",
    basis: "compared photographs",
    of: STRUCK,
    answer: "I have the piece in hand: the wear runs on under the old repair, which is older than any of us.",
  },
  {
    text: "Size given and size in the photograph differ by more than a millimetre.",
    basis: "compared photographs",
    answer: "The size is taken inside the frame. Outside it the difference is gone.",
  },
  {
    text: "{source} gives an earlier beginning, and the entry says nothing of it.",
    basis: "published source",
    answer: "The author took the year over from an older list; the entry goes by what was found since.",
  },
  {
    text: "Printed over the varnish, as far as I can see. That would make it an addition.",
    basis: "compared photographs",
    of: ["printed", "painted", "paper"],
    answer: "Looked at under a glass: the varnish runs over the ink and into the scratch beside it.",
  },
  {
    text: "The label may have been sewn on later; one photograph shows two kinds of thread.",
    basis: "compared photographs",
    of: ["woven", "embroidered"],
    answer:
      "The second thread is a darn that crosses label and cloth alike. Below it the first thread goes through.",
  },
  {
    text: "I handled one that differs in the foot of the letters. Either there are two marks here or one is wrong.",
    basis: "handled the object",
    answer:
      "Struck aslant, the foot comes out so. The third photograph shows the same on a piece beyond doubt.",
  },
  {
    text: "For a mark said to have been in use for {years}, there are too few pieces to speak of a verified period.",
    basis: "other",
    answer: "Few are shown, many are known; and the period rests on papers, not on counting.",
  },
  {
    text: "The description mixes up what all of these have and what this one has.",
    basis: "other",
    answer:
      "Read with the photographs beside it, it tells the constant from the chance. I would let it stand.",
  },
];
