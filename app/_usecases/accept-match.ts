import type { FieldError } from "#core/field-error";
import type { LookUpView } from "#core/look-ups/look-up";
import type { ActingMember } from "#core/members/member";
import type { PinnedMatch } from "#core/object-files/object-file";
import { fail, ok, type Result } from "#core/result";
import type { Hash } from "#core/trail/chain";
import { changeObjectFile } from "./object-files/change-object-file.ts";
import type { ObjectFiles } from "./ports/object-files.ts";
import type { Clock, Entries, Revisions } from "./ports.ts";

type Needs = {
  readonly objectFiles: ObjectFiles;
  readonly entries: Entries;
  readonly revisions: Revisions;
  /** A look-up as it is shown; null when it never was, or its time is over. */
  readonly show: (lookUp: string) => Promise<{ readonly view: LookUpView } | null>;
  readonly clock: Clock;
  readonly hash: Hash;
};

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  readonly had: number;
  readonly mark: string;
  /** Slug; empty to take the match back. */
  readonly entry: string;
  /** Id of the look-up that found it; empty when it was chosen by hand. */
  readonly lookUp: string;
  /** Number of the revision chosen by hand; empty for the one shown today. */
  readonly revision?: string;
};

/** Others near the accepted one that are kept with it, so that a known reproduction among them is seen. */
const NEAR = 8;

/** Accepts an entry as a mark's, pinned to the revision shown today and to the model that found it. */
export async function acceptMatch(
  needs: Needs,
  asked: Asked,
): Promise<Result<number, readonly FieldError[]>> {
  const { id, by, had, mark } = asked;
  const change = (match: PinnedMatch | null) =>
    changeObjectFile(needs, { id, by, had, command: { is: "match", mark, match } });
  if (asked.entry === "") return change(null);
  const pinned = await pin(needs, asked);
  return pinned.ok ? change(pinned.value) : fail([pinned.error]);
}

async function pin(
  needs: Needs,
  { entry, lookUp, revision = "" }: Asked,
): Promise<Result<PinnedMatch, FieldError>> {
  const view = await needs.entries.bySlug(entry);
  if (!view) return fail({ field: "entry", rule: "entry-not-here", received: entry });
  const older = lookUp === "" && revision !== "";
  const chosen = older ? (await needs.revisions.shown(entry, Number(revision)))?.view : view;
  if (!chosen) return fail({ field: "revision", rule: "revision-unknown", received: revision });
  const { id, number, contentHash } = chosen.revision;
  const pinned = {
    entry: view.summary.slug,
    title: view.summary.title,
    revision: { id, number, contentHash },
  };
  if (lookUp === "") return ok({ ...pinned, lookUp: null, model: null, probability: null, near: [] });
  const found = await needs.show(lookUp);
  if (!found) return fail({ field: "look-up", rule: "look-up-unknown", received: lookUp });
  const match = found.view.matches.find((each) => each.entry.slug === entry);
  if (!match) return fail({ field: "entry", rule: "object-not-in-look-up", received: entry });
  const [name = found.view.model, version = ""] = found.view.model.split("@");
  const near = found.view.matches
    .filter((each) => each !== match)
    .slice(0, NEAR)
    .map((each) => ({
      entry: each.entry.slug,
      title: each.entry.title,
      probability: each.probability ?? 0,
    }));
  return ok({ ...pinned, lookUp, model: { name, version }, probability: match.probability, near });
}
