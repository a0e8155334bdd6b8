import type { Piece } from "../dating/piece.ts";
import type { FileEvidence } from "./evidence.ts";
import type { EvidencePiece } from "./object-file.ts";
import { isSaidAlready, isSameStatement } from "./same-statement.ts";
import { pieceOfEvidence } from "./worksheet-of-file.ts";

/**
 * The pieces of a worksheet that a file takes: all but those that its marks, observations, line and provenance say
 * already, as they do when the worksheet came from the file. What shares a group with a piece that the file has joins
 * it there; other groups get a name of their own, since each worksheet has a group A.
 * @param evidence everything in the file that dates the object
 */
export function piecesToTake(
  evidence: readonly FileEvidence[],
  pieces: readonly EvidencePiece[],
): readonly EvidencePiece[] {
  const groups = new Map<string, string>();
  for (const piece of pieces) {
    const there = evidence.find((each) => isSameStatement(pieceOfEvidence(each), piece));
    if (piece.group !== null && there?.group) groups.set(piece.group, there.group);
  }
  for (const { group, id } of pieces) if (group !== null && !groups.has(group)) groups.set(group, id);
  const derived = evidence.filter(({ item }) => item.list !== "pieces").map(pieceOfEvidence);
  return pieces
    .filter(
      (piece, i) =>
        !derived.some((each) => isSaidAlready(each, piece)) && !isAmong(pieces.slice(0, i), piece),
    )
    .map((piece) => ({ ...piece, group: piece.group === null ? null : (groups.get(piece.group) ?? null) }));
}

const isAmong = (all: readonly Piece[], piece: Piece): boolean =>
  all.some((each) => isSameStatement(each, piece));
