import { findObjectFile } from "./object-files/find-object-file.ts";
import type { ObjectFiles, ObjectImages } from "./ports/object-files.ts";

type Needs = { readonly objectFiles: ObjectFiles; readonly objectImages: ObjectImages };

/** May somebody see an image by its address? One that object files alone show, only who may see one of them. */
export async function maySeeImage(needs: Needs, sha256: string, member: string | null): Promise<boolean> {
  const files = await needs.objectImages.privateTo(sha256);
  if (files.length === 0) return true;
  for (const id of files) if (await findObjectFile(needs, id, member)) return true;
  return false;
}
