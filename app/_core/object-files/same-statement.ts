import type { Piece } from "../dating/piece.ts";

/** What a piece states, and of what; how far it is trusted is no part of that. */
export type Statement = Pick<Piece, "kind" | "event" | "edtf" | "alternatives" | "reason" | "source">;

/**
 * Do two pieces state the same, so that both together say no more than one? A text that was cut to fit an address is
 * the same as the whole one.
 */
export function isSameStatement(a: Statement, b: Statement): boolean {
  return (
    a.kind === b.kind &&
    a.event === b.event &&
    a.edtf === b.edtf &&
    a.alternatives.join(";") === b.alternatives.join(";") &&
    isSameText(a.reason, b.reason) &&
    isSameText(a.source, b.source)
  );
}

/**
 * Is it what the file says already? A piece put down in few words is the same as one that the file says in more: of the
 * same kind and years, and where both name a reason or a source, by the same.
 */
export function isSaidAlready(said: Statement, piece: Statement): boolean {
  const fill = (own: string, other: string) => (plainly(own) === "" ? other : own);
  return isSameStatement(
    { ...said, reason: fill(said.reason, piece.reason), source: fill(said.source, piece.source) },
    { ...piece, reason: fill(piece.reason, said.reason), source: fill(piece.source, said.source) },
  );
}

/** A piece with the texts of an older one that states the same, where its own were cut to fit an address. */
export function withWholeTexts<T extends Piece>(piece: T, older: Piece): T {
  const whole = (part: "reason" | "source" | "exceptions") =>
    isBeginningOf(piece[part], plainly(older[part])) ? older[part] : piece[part];
  return { ...piece, reason: whole("reason"), source: whole("source"), exceptions: whole("exceptions") };
}

const CUT = "…";

/** The beginning of a text that is too long, its end marked; spaces and breaks count as one space. */
export function cutTo(most: number, text: string): string {
  const plain = plainly(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1).trimEnd()}${CUT}`;
}

const plainly = (text: string): string => text.replace(/\s+/g, " ").trim();

function isSameText(one: string, other: string): boolean {
  const [a, b] = [plainly(one), plainly(other)].map((text) => text.replace(/\.$/, "").toLowerCase());
  if (a === undefined || b === undefined) return false;
  return a === b || isBeginningOf(a, b) || isBeginningOf(b, a);
}

const isBeginningOf = (cut: string, whole: string): boolean =>
  cut.endsWith(CUT) && cut.length > 1 && whole.startsWith(cut.slice(0, -1));
