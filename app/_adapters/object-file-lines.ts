import type { FileImage, FileLine, Person, Way } from "#core/object-files/kept-file";

type Row = {
  readonly id: string;
  readonly title: string;
  readonly family: string;
  readonly owner: Person;
  readonly members: readonly { readonly memberId: string; readonly way: string }[];
  readonly updatedAt: Date;
  readonly publishedAt: Date | null;
  readonly images: readonly FileImage[];
};

/** A row of a list of object files; of the published ones nobody in particular is told. */
export function toFileLine(row: Row, member: string | null): FileLine {
  const { id, title, family, owner, updatedAt } = row;
  const invited = row.members.find(({ memberId }) => memberId === member);
  const [image] = row.images;
  return {
    id,
    title,
    family,
    owner,
    access: owner.id === member ? "owner" : ((invited?.way as Way | undefined) ?? "view"),
    updatedAt,
    published: row.publishedAt !== null,
    image: image ? { sha256: image.sha256, width: image.width, height: image.height } : null,
  };
}
