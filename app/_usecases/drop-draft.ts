import type { Blobs, Drafts, LookUps } from "./ports.ts";

type Needs = { readonly drafts: Drafts; readonly lookUps: LookUps; readonly blobs: Blobs };

/** Takes a photograph out of a draft; its image goes too, unless something else shows it. */
export async function dropDraftPhotograph(
  needs: Needs,
  asked: { readonly id: string; readonly owner: string; readonly sha256: string },
): Promise<boolean> {
  const draft = await needs.drafts.find(asked.id, asked.owner);
  if (!draft?.photographs.some(({ sha256 }) => sha256 === asked.sha256)) return false;
  await needs.drafts.removePhotograph(asked.id, asked.owner, asked.sha256);
  await letGo(needs, [asked.sha256]);
  return true;
}

/** Throws a draft away. */
export async function dropDraft(needs: Needs, id: string, owner: string): Promise<boolean> {
  const draft = await needs.drafts.find(id, owner);
  if (!draft || draft.submitted) return false;
  await needs.drafts.end(id, owner, null);
  await letGo(
    needs,
    draft.photographs.map(({ sha256 }) => sha256),
  );
  return true;
}

async function letGo({ lookUps, blobs }: Needs, images: readonly string[]): Promise<void> {
  for (const sha256 of images) if (!(await lookUps.imageInUse(sha256))) await blobs.remove(sha256);
}
