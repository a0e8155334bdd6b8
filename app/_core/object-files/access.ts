import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Access, AccessEvent, KeptFile, Person, Way } from "./kept-file.ts";

/** How far a member is let in; null for nobody in particular. A published file may be read by anybody. */
export function accessOf(
  file: Pick<KeptFile, "owner" | "invited" | "publishedAt">,
  member: string | null,
): Access | null {
  if (member !== null && file.owner.id === member) return "owner";
  const invited = member === null ? undefined : file.invited.find(({ id }) => id === member);
  return invited?.way ?? (file.publishedAt ? "view" : null);
}

/** What an owner asks for about who may see a file. */
export type AccessCommand =
  | { readonly kind: "invite"; readonly member: Person; readonly way: Way }
  | { readonly kind: "end invitation"; readonly member: string }
  | { readonly kind: "share" }
  | { readonly kind: "revoke" }
  | { readonly kind: "publish" }
  | { readonly kind: "end publication" };

/** Members whom one file is opened to. */
const MOST_INVITED = 50;

/**
 * Who is let in or shut out. What is so already is no event; a new link is one even when there is a link, since the
 * old one stops leading anywhere.
 */
export function decideAccess(
  file: KeptFile,
  command: AccessCommand,
): Result<Pick<AccessEvent, "type" | "member"> | null, FieldError> {
  switch (command.kind) {
    case "invite": {
      const { member, way } = command;
      if (member.id === file.owner.id)
        return fail({ field: "invited", rule: "object-owner-invited", received: member.name });
      const had = file.invited.find(({ id }) => id === member.id);
      if (had?.way === way) return ok(null);
      if (!had && file.invited.length >= MOST_INVITED)
        return fail({
          field: "invited",
          rule: "object-invited-most",
          received: String(file.invited.length),
          params: { most: MOST_INVITED },
        });
      return ok({ type: way === "view" ? "invited to view" : "invited to edit", member });
    }
    case "end invitation": {
      const had = file.invited.find(({ id }) => id === command.member);
      return ok(had ? { type: "invitation ended", member: { id: had.id, name: had.name } } : null);
    }
    case "share":
      return ok({ type: "link made", member: null });
    case "revoke":
      return ok(file.sharedAt ? { type: "link revoked", member: null } : null);
    case "publish":
      return ok(file.publishedAt ? null : { type: "published", member: null });
    case "end publication":
      return ok(file.publishedAt ? { type: "publication ended", member: null } : null);
  }
}
