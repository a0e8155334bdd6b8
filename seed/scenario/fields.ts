import type { Subject } from "../render/subject.ts";

/** The field of each chapter's trade. */
const OF_CHAPTER: Readonly<Record<string, string>> = {
  "clocks.txt": "clocks and instruments",
  "cutlery.txt": "metalwork",
  "pewter.txt": "metalwork",
  "stoneware.txt": "ceramics",
  "stuffed-animals.txt": "toys",
  "textiles.txt": "textiles",
  "tin-toys.txt": "toys",
};

/**
 * Who is competent in an entry: toys are judged by those who know toys, whatever the mark is made of; a paper label
 * elsewhere by those who know print, and the rest by what the object is made of.
 */
export function fieldOf(chapter: string, { material }: Subject): string {
  const ofTrade = OF_CHAPTER[chapter];
  if (ofTrade === "toys" || ofTrade === "clocks and instruments") return ofTrade;
  if (material === "paper") return "paper and print";
  if (material === "wood") return "other";
  if (material === "glass") return "glass";
  return ofTrade ?? (material === "enamel" ? "metalwork" : "glass");
}
