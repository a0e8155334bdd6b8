import type { EntryContent, EntrySummary, EntryView } from "#core/entries/entry";
import type { MakerContent, MakerSummary, MakerView } from "#core/entries/maker";
import type { EntryPage, EntryQuery } from "#core/entries/query";
import type { FieldError } from "#core/field-error";
import type { FolderError, FolderRecord } from "#core/import/folder-record";
import type { Timings } from "#core/look-ups/look-up";
import type { Alignment } from "#core/photographs/alignment";
import type { Photograph } from "#core/photographs/photograph";
import type { Region } from "#core/photographs/region";
import type { Result } from "#core/result";
import type { LikenessThresholds } from "#core/similarity/likeness";
import type { Hit } from "#core/similarity/rank";

/** An image that was read and judged: upright, free of metadata, safe to keep and to show. */
export type ReadImage = {
  readonly bytes: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** Size of what came in, upright; regions are stated in its pixels. */
  readonly original: { readonly width: number; readonly height: number };
};

/** Reads images that strangers send. */
export type ImageReader = {
  /** @param name the file's name, for messages */
  read(bytes: Uint8Array, purpose: "look-up" | "reference"): Promise<Result<ReadImage, FieldError>>;
};

/** Images on disk by the SHA-256 of their bytes. */
export type Blobs = {
  /** `isNew` is false when the same image was there already. */
  put(bytes: Uint8Array): Promise<{ readonly sha256: string; readonly isNew: boolean }>;
  get(sha256: string): Promise<Uint8Array | null>;
  remove(sha256: string): Promise<void>;
};

export type QueryVector = { readonly turn: number; readonly vector: Float32Array };

/** The vision model: photograph and region in, unit vectors of 256 numbers out. */
export type Embedder = {
  /** name@version */
  readonly model: string;
  readonly likeness: LikenessThresholds;
  embedReference(image: Uint8Array, region: Region): Promise<Float32Array>;
  embedQuery(
    image: Uint8Array,
    region: Region,
  ): Promise<{
    readonly vectors: readonly QueryVector[];
    readonly preprocessMs: number;
    readonly embedMs: number;
  }>;
};

export type ImageToAlign = { readonly sha256: string; readonly bytes: Uint8Array; readonly region: Region };

/** Lays the mark of one photograph over another's by what can be seen in both. */
export type Aligner = {
  align(query: ImageToAlign, reference: ImageToAlign): Promise<Alignment>;
};

/** Nearest neighbours among the vectors of current revisions' photographs. */
export type Nearest = {
  /** @returns up to `limit` hits for each query vector */
  search(model: string, queries: readonly QueryVector[], limit: number): Promise<readonly Hit[]>;
  count(model: string): Promise<number>;
};

export type KeptLookUp = {
  readonly id: string;
  readonly ownerHash: string;
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
  readonly model: string;
  readonly noneFits: boolean;
  readonly searched: number;
  readonly matches: readonly { readonly hit: Hit; readonly photographsNear: number }[];
  readonly timings: Timings;
  readonly createdAt: Date;
  readonly expiresAt: Date | null;
};

export type LookUps = {
  save(lookUp: KeptLookUp): Promise<void>;
  find(id: string): Promise<KeptLookUp | null>;
  setExpiry(id: string, expiresAt: Date | null): Promise<void>;
  remove(id: string): Promise<void>;
  /** Ids of look-ups whose time is over, oldest first. */
  expired(now: Date, limit: number): Promise<readonly string[]>;
  /** Is the image still shown by any look-up or photograph? */
  imageInUse(sha256: string): Promise<boolean>;
  /** Is the image one that this owner looked up? */
  imageOwnedBy(sha256: string, ownerHash: string): Promise<boolean>;
};

export type Entries = {
  bySlug(slug: string): Promise<EntryView | null>;
  /** By id, in no order. */
  summaries(ids: readonly string[]): Promise<ReadonlyMap<string, EntrySummary>>;
  photographs(ids: readonly string[]): Promise<ReadonlyMap<string, Photograph>>;
  search(query: EntryQuery): Promise<EntryPage>;
  counts(): Promise<{ readonly entries: number; readonly photographs: number; readonly makers: number }>;
};

export type Makers = {
  bySlug(slug: string): Promise<MakerView | null>;
  list(words: string): Promise<readonly MakerSummary[]>;
};

/** A photograph ready to be recorded: its image is kept, and its vector computed unless it is there already. */
export type PhotographToRecord = {
  readonly entry: string;
  readonly sha256: string;
  readonly width: number;
  readonly height: number;
  readonly region: Region;
  readonly pixelsPerMm: number | null;
  readonly shows: string;
  readonly licence: string;
  readonly credit: string;
  readonly vector: Float32Array | null;
};

export type RecordedCounts = {
  readonly makers: number;
  readonly entries: number;
  readonly revisions: number;
  readonly photographs: number;
};

/** Where references are recorded. */
export type References = {
  /** Which of these slugs exist already. */
  knownMakers(slugs: readonly string[]): Promise<ReadonlySet<string>>;
  knownEntries(slugs: readonly string[]): Promise<ReadonlySet<string>>;
  /** Fingerprints of the photographs that these entries show now and that have a vector of the model. */
  knownPhotographs(model: string, entries: readonly string[]): Promise<ReadonlySet<string>>;
  /** Records everything in one transaction; what is there already and unchanged is left alone. */
  record(batch: {
    readonly makers: readonly MakerContent[];
    readonly entries: readonly { readonly slug: string; readonly content: EntryContent }[];
    readonly photographs: readonly PhotographToRecord[];
    readonly model: string;
    readonly by: string;
  }): Promise<RecordedCounts>;
};

export type Clock = { now(): Date };
export type Randomness = { /** Unguessable, safe in an address. */ token(): string };

/** A folder of references as somebody laid it down: records of three files, and the photographs beside them. */
export type ImportFolder = {
  readonly makers: readonly FolderRecord[];
  readonly entries: readonly FolderRecord[];
  readonly photographs: readonly FolderRecord[];
  /** What could not be read at all. */
  readonly errors: readonly FolderError[];
  /** The bytes of a photograph by its path inside the folder; null when it isn't there. */
  photograph(file: string): Promise<Uint8Array | null>;
};
