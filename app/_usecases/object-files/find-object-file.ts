import { accessOf } from "#core/object-files/access";
import type { Access, KeptFile } from "#core/object-files/kept-file";
import type { ObjectFiles } from "../ports/object-files.ts";
import type { Keys } from "../ports.ts";

type Needs = { readonly objectFiles: ObjectFiles };
export type FoundFile = {
  readonly kept: KeptFile;
  readonly access: Access;
  /** Sees it only because it is published. */
  readonly isStranger: boolean;
};

/** A file that a member may see, or anybody when it is published; null for whom it is as if there were none. */
export async function findObjectFile(
  { objectFiles }: Needs,
  id: string,
  member: string | null,
): Promise<FoundFile | null> {
  const kept = await objectFiles.find(id);
  const access = kept && accessOf(kept, member);
  if (!kept || !access) return null;
  return { kept, access, isStranger: accessOf({ ...kept, publishedAt: null }, member) === null };
}

/** A file by the key in the address that its owner handed out; null when there is none, or it was revoked. */
export async function findSharedFile(
  { objectFiles, keys }: Needs & { readonly keys: Keys },
  key: string,
): Promise<KeptFile | null> {
  if (!/^[\w-]{1,64}$/.test(key)) return null;
  const id = await objectFiles.idByShare(keys.hashOf(key));
  return id === null ? null : objectFiles.find(id);
}

/** The same for who may change it: null as well for who may only read. */
export async function findFileToChange(needs: Needs, id: string, member: string): Promise<FoundFile | null> {
  const found = await findObjectFile(needs, id, member);
  return found && found.access !== "view" ? found : null;
}
