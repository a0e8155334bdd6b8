import type { FilePhotograph, MarkFound, ObjectFile, PinnedMatch } from "#core/object-files/object-file";
import type { MarkReference } from "#core/object-files/report/parts";
import { ROOMS } from "#core/object-files/report/room";
import type { Photograph } from "#core/photographs/photograph";
import { framed, isConfident } from "#core/photographs/proposal";
import { type Region, wholeOf } from "#core/photographs/region";
import type { ObjectImages } from "../ports/object-files.ts";
import type { Contents } from "../ports/review.ts";
import type { Aligner, Blobs, LookUps, MarkFinder, Revisions } from "../ports.ts";

type Needs = {
  readonly revisions: Pick<Revisions, "shown">;
  readonly contents: Pick<Contents, "isHiddenImage">;
  readonly lookUps: Pick<LookUps, "find">;
  readonly blobs: Pick<Blobs, "get">;
  readonly marks: MarkFinder;
  readonly aligner: Aligner;
  readonly objectImages: Pick<ObjectImages, "has">;
};

/** Photographs of a revision that a mark is laid over, one after the other, until it lies on one. */
const TRIED = 3;

/**
 * What each matched mark of a file is compared with: a photograph of the very revision that it is pinned to, but none
 * that moderators hid; where a look-up found it, laid over that by what can be seen in both.
 */
export async function compareMarks(
  needs: Needs,
  file: { readonly id: string; readonly content: ObjectFile },
): Promise<Readonly<Record<string, MarkReference>>> {
  // Two marks of one entry, as is common, are looked up once.
  const shown = new Map<string, Promise<readonly Photograph[]>>();
  const shownOf = (match: PinnedMatch) => {
    const key = `${match.entry} ${match.revision.number}`;
    const photographs = shown.get(key) ?? photographsOf(needs, match);
    shown.set(key, photographs);
    return photographs;
  };
  const compared = await Promise.all(
    file.content.marks.slice(0, ROOMS[0].marks).map(async (mark) => {
      const references = mark.match ? await nearestFirst(needs, mark.match, await shownOf(mark.match)) : [];
      const [first] = references;
      if (!first) return [];
      const own = mark.match?.lookUp ? await ownPhotograph(needs, file, mark) : null;
      const laid = own && (await layOnOne(needs, own, references));
      return [[mark.id, laid ?? { photograph: first, laid: null }] as const];
    }),
  );
  return Object.fromEntries(compared.flat());
}

/** What the revision shows, but nothing that moderators hid. */
async function photographsOf(
  { revisions, contents }: Needs,
  match: PinnedMatch,
): Promise<readonly Photograph[]> {
  const all = (await revisions.shown(match.entry, match.revision.number))?.view.photographs ?? [];
  const hidden = await Promise.all(all.map(({ sha256 }) => contents.isHiddenImage(sha256)));
  return all.filter((_, i) => !hidden[i]);
}

/** The nearest of the look-up first, as long as that is kept. */
async function nearestFirst(
  { lookUps }: Needs,
  match: PinnedMatch,
  photographs: readonly Photograph[],
): Promise<readonly Photograph[]> {
  const kept = match.lookUp === null ? null : await lookUps.find(match.lookUp);
  const nearest = new Set(kept?.matches.map(({ hit }) => hit?.photographId));
  return photographs.toSorted((a, b) => Number(nearest.has(b.id)) - Number(nearest.has(a.id)));
}

type Own = { readonly sha256: string; readonly bytes: Uint8Array; readonly region: Region };

/** The file's first photograph of a mark, framed where the mark likely is. */
async function ownPhotograph(
  { blobs, marks, objectImages }: Needs,
  { id, content }: { readonly id: string; readonly content: ObjectFile },
  mark: MarkFound,
): Promise<Own | null> {
  const isOwn = ({ of, item }: FilePhotograph) => of === "mark" && item === mark.id;
  const photograph = content.photographs.find(isOwn);
  if (!photograph || !(await objectImages.has(id, photograph.sha256))) return null;
  const bytes = await blobs.get(photograph.sha256);
  if (!bytes) return null;
  const [place] = await marks.find(bytes);
  const region = place && isConfident(place) ? framed(place.region, photograph) : wholeOf(photograph);
  return { sha256: photograph.sha256, bytes, region };
}

async function layOnOne(
  { blobs, aligner }: Needs,
  own: Own,
  references: readonly Photograph[],
): Promise<MarkReference | null> {
  for (const photograph of references.slice(0, TRIED)) {
    const { sha256, region } = photograph;
    const bytes = await blobs.get(sha256);
    const laid = bytes && (await aligner.align(own, { sha256, bytes, region }));
    // Where too many wait for the aligner the report is made without.
    if (laid?.ok && laid.value.plausible)
      return { photograph, laid: { own: own.sha256, region: own.region, alignment: laid.value } };
  }
  return null;
}
