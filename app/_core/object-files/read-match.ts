import { isSlug } from "../entries/slug.ts";
import type { FileCommand } from "./commands.ts";
import type { FileFields } from "./file-fields.ts";
import { LONGEST } from "./limits.ts";
import type { PinnedMatch } from "./object-file.ts";

const LONGEST_NEAR = 10;

/** Reads a match as the look-up gave it; without an entry the match is taken back. `near` is JSON, as it is kept. */
export function readMatch(read: FileFields): FileCommand {
  const mark = read.id("mark");
  if (!read.has("entry")) return { is: "match", mark, match: null };
  const entry = read.raw("entry");
  if (!isSlug(entry)) read.refuse("entry", "entry-address", entry);
  const name = read.line("model_name", { longest: LONGEST.line });
  const match: PinnedMatch = {
    entry,
    title: read.line("title", { shortest: 1, longest: LONGEST.line }),
    revision: {
      id: read.id("revision"),
      number: read.number("revision_number", 1, 1_000_000),
      contentHash: read.sha256("content_hash"),
    },
    lookUp: read.optionalId("look_up"),
    model: name === "" ? null : { name, version: read.line("model_version", { longest: LONGEST.line }) },
    probability: read.optionalNumber("probability", 0, 1),
    near: readNear(read),
  };
  return { is: "match", mark, match };
}

function readNear(read: FileFields): PinnedMatch["near"] {
  if (!read.has("near")) return [];
  const near = parseJson(read.raw("near"));
  if (Array.isArray(near) && near.length <= LONGEST_NEAR && near.every(isNear))
    return near.map(({ entry, title, probability }) => ({ entry, title, probability }));
  read.refuse("near", "near-matches", read.raw("near"), { most: LONGEST_NEAR });
  return [];
}

function isNear(value: unknown): value is PinnedMatch["near"][number] {
  if (typeof value !== "object" || value === null) return false;
  const { entry, title, probability } = value as Record<string, unknown>;
  return (
    typeof entry === "string" &&
    isSlug(entry) &&
    typeof title === "string" &&
    typeof probability === "number" &&
    probability >= 0 &&
    probability <= 1
  );
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
