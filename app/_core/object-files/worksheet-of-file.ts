import type { Estimate } from "../dating/estimate.ts";
import type { Piece } from "../dating/piece.ts";
import { GROUPS } from "../dating/read-evidence-form.ts";
import { addressOf, WORKSHEET_LIMITS, type Worksheet } from "../dating/worksheet.ts";
import { PIECE_LIMITS } from "../dating/worksheet-piece.ts";
import type { FileEvidence } from "./evidence.ts";
import type { ObjectFile } from "./object-file.ts";
import { cutTo } from "./same-statement.ts";

/** Evidence of a file as a piece of a worksheet; its group is still the file's. */
export function pieceOfEvidence(evidence: FileEvidence): Piece {
  const { kind, event, interval, reliability, reason, source, basis, exceptions, group } = evidence;
  return {
    ...{ kind, event, edtf: interval.edtf, basis, group },
    reliability: Math.round(1000 * Math.min(0.999, Math.max(0.5, reliability))) / 1000,
    reason: cutTo(PIECE_LIMITS.reason, reason),
    source: cutTo(PIECE_LIMITS.source, source),
    exceptions: cutTo(PIECE_LIMITS.exceptions, exceptions),
    alternatives: (evidence.alternatives ?? []).map(({ edtf }) => edtf).slice(0, PIECE_LIMITS.alternatives),
  };
}

/** Texts are cut to these lengths, one after the other, until the worksheet fits an address. */
const LENGTHS = [PIECE_LIMITS.reason, 160, 80, 40] as const;

/** A file's evidence as a worksheet, and how many pieces of little weight did not fit. */
export function worksheetOf(
  { title }: Pick<ObjectFile, "title">,
  evidence: readonly FileEvidence[],
  { weights }: Estimate,
): { readonly worksheet: Worksheet; readonly left: number } {
  const heaviest = evidence.toSorted((a, b) => (weights[b.id] ?? 0) - (weights[a.id] ?? 0));
  for (let count = Math.min(evidence.length, WORKSHEET_LIMITS.pieces); count > 0; count--) {
    const kept = new Set(heaviest.slice(0, count).map(({ id }) => id));
    const pieces = lettered(evidence.filter(({ id }) => kept.has(id)).map(pieceOfEvidence));
    for (const most of LENGTHS) {
      const worksheet = {
        ...{ title: cutTo(WORKSHEET_LIMITS.title, title), years: null },
        pieces: pieces.map((each) => shortened(each, most)),
      };
      if (addressOf(worksheet).length <= WORKSHEET_LIMITS.address)
        return { worksheet, left: evidence.length - count };
    }
  }
  return { worksheet: { title, years: null, pieces: [] }, left: evidence.length };
}

const shortened = (piece: Piece, most: number): Piece => ({
  ...piece,
  reason: cutTo(most, piece.reason),
  source: cutTo(most, piece.source),
  exceptions: cutTo(most, piece.exceptions),
});

/** Groups of more than one get the letters of a worksheet; when those run out, numbers. */
function lettered(pieces: readonly Piece[]): readonly Piece[] {
  const shared = [...new Set(pieces.map(({ group }) => group))].filter(
    (group) => group !== null && pieces.filter((each) => each.group === group).length > 1,
  );
  const letters = new Map(shared.map((group, i) => [group, GROUPS[i] ?? String(i + 1)]));
  return pieces.map((piece) => ({ ...piece, group: letters.get(piece.group) ?? null }));
}
