import { readdir } from "node:fs/promises";
import { join } from "node:path";

/** One image of a folder `<class>/<image>`. */
export type ClassImage = { readonly class: string; readonly file: string; readonly path: string };

const IMAGE = /\.(jpe?g|png|webp|tiff?|avif|gif|heic)$/i;

/** Every image of a folder laid out as `<class>/<image>`, in the order of their names. */
export async function imagesOfClasses(folder: string): Promise<readonly ClassImage[]> {
  const classes = (await readdir(folder, { withFileTypes: true })).filter((entry) => entry.isDirectory());
  const images: ClassImage[] = [];
  for (const { name } of classes.sort((a, b) => a.name.localeCompare(b.name))) {
    const files = (await readdir(join(folder, name))).filter((file) => IMAGE.test(file)).sort();
    images.push(...files.map((file) => ({ class: name, file, path: join(folder, name, file) })));
  }
  if (images.length === 0)
    throw new Error(`The folder must hold images as <class>/<image>. Received ${folder}.`);
  return images;
}

/** The key of the entry that stands for a class: lower case, letters and digits, the rest as hyphens. */
export function keyOfClass(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
}
