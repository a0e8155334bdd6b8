import { cache } from "react";
import type { Draft } from "#core/drafts/draft";
import type { ActingMember } from "#core/members/member";
import { may } from "#core/permissions";
import { actor } from "../actor.ts";
import { live } from "../live.ts";

/** The member who asks, if they may write drafts; null for everybody else. */
export const writer = cache(async (): Promise<ActingMember | null> => {
  const who = await actor();
  return who.kind === "member" && may(who, "write a draft") ? who : null;
});

/** A draft of whoever asks; null when it is somebody else's, or there is none. */
export const ownDraft = cache(async (id: string): Promise<Draft | null> => {
  const member = await writer();
  return member && (await live()).drafts.find(id, member.id);
});
