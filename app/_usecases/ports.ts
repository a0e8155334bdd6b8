import type { Draft, DraftPhotograph } from "#core/drafts/draft";
import type { EntryContent, EntrySummary, EntryView } from "#core/entries/entry";
import type { MakerContent, MakerSummary, MakerView } from "#core/entries/maker";
import type { EntryPage, EntryQuery } from "#core/entries/query";
import type { RevisionLine, RevisionView } from "#core/entries/revision";
import type { FieldError } from "#core/field-error";
import type { FolderError, FolderRecord } from "#core/import/folder-record";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { Alignment } from "#core/photographs/alignment";
import type { Photograph } from "#core/photographs/photograph";
import type { Proposal } from "#core/photographs/proposal";
import type { Region } from "#core/photographs/region";
import type { KeptQuestion } from "#core/questions/kept-question";
import type { Question, QuestionEvent } from "#core/questions/question";
import type { LegibleLetters } from "#core/reading/legible-letters";
import type { MachineReading } from "#core/reading/propose-letters";
import type { Result } from "#core/result";
import type { ReviewPolicy } from "#core/review/policy";
import type { EntryFacts } from "#core/similarity/findings";
import type { Hit } from "#core/similarity/rank";
import type { Described, QueryVector } from "./ports/models.ts";

export type * from "./ports/members.ts";
export type * from "./ports/models.ts";
export type * from "./ports/object-files.ts";

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

/** Finds where in a photograph a mark is. */
export type MarkFinder = {
  /** @returns up to three places, best first, in pixels of the image */
  find(image: Uint8Array): Promise<readonly Proposal[]>;
};

export type ImageToAlign = { readonly sha256: string; readonly bytes: Uint8Array; readonly region: Region };

/** Lays the mark of one photograph over another's by what can be seen in both. */
export type Aligner = {
  /** @returns as the error, that too many wait, or that it took too long */
  align(query: ImageToAlign, reference: ImageToAlign): Promise<Result<Alignment, FieldError>>;
};

/** Reads the writing in a photograph by machine. */
export type LettersReader = {
  /** @returns readings, the best first; as the error, that too many wait, or that it took too long */
  read(image: Uint8Array, region: Region): Promise<Result<readonly MachineReading[], FieldError>>;
};

/** Nearest neighbours among the vectors of current revisions' photographs. */
export type Nearest = {
  /** @returns up to `limit` hits for each query vector */
  search(model: string, queries: readonly QueryVector[], limit: number): Promise<readonly Hit[]>;
  /** @returns a hit for each query vector and each photograph of these entries, however far away */
  among(model: string, queries: readonly QueryVector[], entries: readonly string[]): Promise<readonly Hit[]>;
  count(model: string): Promise<number>;
  /** What the model makes of these photographs, by id; those without details are missing. */
  describedBy(model: string, photographs: readonly string[]): Promise<ReadonlyMap<string, Described>>;
  /** How many entries have photographs to compare with; one whose photographs lack vectors still may count. */
  countEntries(): Promise<number>;
  /** How many photographs with a vector each of these entries has; those with none are missing. */
  photographsOf(model: string, entries: readonly string[]): Promise<ReadonlyMap<string, number>>;
};

/** What entries say of themselves that can be compared with what a person knows of an object. */
export type Readings = {
  /**
   * Ids of entries whose transcription the letters agree with; the nearest by trigrams when none does exactly.
   * @param limit 1 to 200
   */
  find(letters: LegibleLetters, limit: number): Promise<readonly string[]>;
  facts(entries: readonly string[]): Promise<ReadonlyMap<string, EntryFacts>>;
  /** Materials that entries name, in the order of the alphabet. */
  materials(): Promise<readonly string[]>;
};

export type LookUps = {
  save(lookUp: KeptLookUp): Promise<void>;
  find(id: string): Promise<KeptLookUp | null>;
  setExpiry(id: string, expiresAt: Date | null): Promise<void>;
  remove(id: string): Promise<void>;
  /** Ids of look-ups whose time is over, oldest first. */
  expired(now: Date, limit: number): Promise<readonly string[]>;
  /** Is the image still shown by any look-up, photograph, question, draft or object file? */
  imageInUse(sha256: string): Promise<boolean>;
  /** Is the image one that this owner looked up? */
  imageOwnedBy(sha256: string, ownerHash: string): Promise<boolean>;
};

export type Entries = {
  bySlug(slug: string): Promise<EntryView | null>;
  /** What object files ask of entries, by slug; those that are there, in the order of their slugs. */
  matched(slugs: readonly string[]): Promise<readonly MatchedEntry[]>;
  /** By id, in no order. */
  summaries(ids: readonly string[]): Promise<ReadonlyMap<string, EntrySummary>>;
  photographs(ids: readonly string[]): Promise<ReadonlyMap<string, Photograph>>;
  /**
   * The slug of the maker by the id of the entry: all entries of the makers who have one of these.
   * @returns up to 2,000, by id
   */
  ofMakers(ids: readonly string[]): Promise<ReadonlyMap<string, string>>;
  search(query: EntryQuery): Promise<EntryPage>;
  counts(): Promise<{ readonly entries: number; readonly photographs: number; readonly makers: number }>;
};

export type Makers = {
  bySlug(slug: string): Promise<MakerView | null>;
  list(words: string): Promise<readonly MakerSummary[]>;
};

/** A photograph ready to be recorded: its image is kept, and its vectors computed unless it is there already. */
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
  readonly impression: number | null;
  /** By model; null when the photograph is there already. */
  readonly vectors: ReadonlyMap<string, Described> | null;
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
  /** Fingerprints of the photographs that these entries show, or ever showed. */
  knownPhotographs(entries: readonly string[]): Promise<ReadonlySet<string>>;
  /**
   * Records everything in one transaction, revisions with their places in the trails; what is there already and
   * unchanged is left alone.
   * @returns as the error, which rule refuses which entry; nothing is recorded then
   */
  record(batch: {
    readonly makers: readonly MakerContent[];
    readonly entries: readonly { readonly slug: string; readonly content: EntryContent }[];
    readonly photographs: readonly PhotographToRecord[];
    readonly by: string;
    readonly at: string;
    /** By slug, when entries were recorded that were not recorded now. */
    readonly times?: ReadonlyMap<string, string>;
    /** By which the reviews go that begin now. */
    readonly policy: ReviewPolicy;
  }): Promise<Result<RecordedCounts, FieldError & { readonly entry: string }>>;
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

/** Keys that are given out once and kept as their SHA-256 alone. */
export type Keys = {
  /** Unguessable, safe in an address. */
  make(): { readonly key: string; readonly hash: string };
  /** Does the key have that hash? Takes as long whatever the key is. */
  opens(key: string, hash: string): boolean;
  hashOf(key: string): string;
};

/** A question, with what its asker is known by. */
type AskedQuestion = KeptQuestion & {
  readonly keyHash: string;
  /** Who asked it while signed in. */
  readonly askerMember: string | null;
};

/** Open questions, each with everything that happened to it. */
export type Questions = {
  /** @returns the id of the question that was published from the same look-up already; null when this one is new */
  publish(question: AskedQuestion): Promise<string | null>;
  find(id: string): Promise<AskedQuestion | null>;
  /**
   * Adds events to those it had; the photographs of a withdrawn question are let go.
   * @param had how many events there were when it was decided
   * @param by the member whose doing it was; null for who is not signed in
   * @returns false when others came meanwhile, and nothing was added
   */
  append(
    id: string,
    had: number,
    events: readonly QuestionEvent[],
    now: Question,
    by: string | null,
  ): Promise<boolean>;
  /** Open ones first, then answered ones, the newest of each first; not those withdrawn. */
  list(after: number, limit: number): Promise<readonly KeptQuestion[]>;
  /** The question that an entry was made from. */
  ofEntry(slug: string): Promise<KeptQuestion | null>;
  /** The question published from a look-up. */
  ofLookUp(lookUp: string): Promise<string | null>;
};

/** What members are writing; each is its owner's alone, and nobody else finds it. */
export type Drafts = {
  create(draft: Omit<Draft, "version" | "updatedAt" | "submitted">): Promise<void>;
  find(id: string, owner: string): Promise<Draft | null>;
  /** Last changed first. */
  list(owner: string, limit: number): Promise<readonly Draft[]>;
  /**
   * Saves the form as it stands.
   * @param had the version that it was made from
   * @returns the draft; null when another version was saved meanwhile, or it is gone
   */
  save(
    id: string,
    owner: string,
    had: number,
    next: Pick<Draft, "typed"> & Partial<Pick<Draft, "parents" | "basedOn" | "photographs">>,
  ): Promise<Draft | null>;
  /** @returns false when it has as many as it may, or that one already */
  addPhotograph(id: string, owner: string, photograph: DraftPhotograph): Promise<boolean>;
  removePhotograph(id: string, owner: string, sha256: string): Promise<void>;
  /** Moves one by a place, towards the first or the last; one that is there already stays. */
  movePhotograph(id: string, owner: string, sha256: string, towards: "first" | "last"): Promise<void>;
  /** Writes down what became of it, or with null that it is gone. */
  end(id: string, owner: string, submitted: Draft["submitted"]): Promise<void>;
};

/** Revisions of entries, as they are read. */
export type Revisions = {
  /** Any revision by its number; null when there is none. */
  shown(slug: string, number: number): Promise<RevisionView | null>;
  /** All of an entry's, oldest first. */
  list(slug: string): Promise<readonly RevisionLine[]>;
};
