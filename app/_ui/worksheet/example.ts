import type { Piece } from "#core/dating/piece";
import { addressOf, type Worksheet } from "#core/dating/worksheet";
import type { SheetWords } from "./piece-words.ts";

/** An invented object with evidence of most kinds, of which one piece can't be true beside the others. */
export function exampleAddress(t: SheetWords): string {
  const base = { basis: null, group: null, exceptions: "", source: "", alternatives: [] } as const;
  const pieces: readonly Piece[] = [
    {
      ...base,
      kind: "mark",
      event: "marked",
      edtf: "1903/1912",
      reliability: 0.95,
      reason: t("examplePieces.mark"),
      source: t("examplePieces.markSource"),
      basis: "published",
    },
    {
      ...base,
      kind: "number",
      event: "marked",
      edtf: "1906/..",
      reliability: 0.99,
      reason: t("examplePieces.number"),
      source: t("examplePieces.numberSource"),
      basis: "published",
    },
    {
      ...base,
      kind: "catalogue-line",
      event: "made",
      edtf: "1907/1910",
      reliability: 0.9,
      reason: t("examplePieces.line"),
      source: t("examplePieces.lineSource"),
      basis: "published",
    },
    {
      ...base,
      kind: "material",
      event: "made",
      edtf: "1900~/1925~",
      reliability: 0.8,
      reason: t("examplePieces.material"),
      basis: "common-practice",
    },
    {
      ...base,
      kind: "story",
      event: "given",
      edtf: "1909-12-25",
      reliability: 0.9,
      reason: t("examplePieces.given"),
    },
    {
      ...base,
      kind: "photograph",
      event: "photographed",
      edtf: "1913-22",
      reliability: 0.9,
      reason: t("examplePieces.photograph"),
    },
    {
      ...base,
      kind: "story",
      event: "sold",
      edtf: "1899",
      reliability: 0.65,
      reason: t("examplePieces.sold"),
      basis: "from-memory",
    },
    {
      ...base,
      kind: "repair",
      event: "repaired",
      edtf: "1938",
      reliability: 0.95,
      reason: t("examplePieces.repair"),
      source: t("examplePieces.repairSource"),
    },
  ];
  const worksheet: Worksheet = { title: t("examplePieces.title"), years: null, pieces };
  return addressOf(worksheet);
}
