import type {
  AccessEvent,
  FileImage,
  FileLine,
  FileVersion,
  KeptFile,
  Person,
} from "#core/object-files/kept-file";
import type { ObjectFile } from "#core/object-files/object-file";

/** What a new version says, and what made it. */
export type WrittenVersion = {
  readonly content: ObjectFile;
  readonly command: { readonly is: string };
  readonly at: Date;
  readonly by: Person;
};

/** Object files with every version of each. Who may see one is for the use cases to say. */
export type ObjectFiles = {
  create(id: string, first: WrittenVersion): Promise<void>;
  find(id: string): Promise<KeptFile | null>;
  /** @param hash SHA-256 of the key in the shared address */
  idByShare(hash: string): Promise<string | null>;
  /** Those that a member owns or is invited into, last changed first. */
  list(member: string, limit: number): Promise<readonly FileLine[]>;
  /**
   * Those that are published, last changed first.
   * @param entry slug of an entry that a mark of theirs is matched with; null for all
   */
  published(entry: string | null, limit: number): Promise<readonly FileLine[]>;
  versions(id: string): Promise<readonly FileVersion[]>;
  /** What a version said; null when there is none of that number. */
  contentOf(id: string, number: number): Promise<ObjectFile | null>;
  /**
   * @param had number of the version that it was made from
   * @returns false when another version came meanwhile, and nothing was written
   */
  append(id: string, had: number, next: WrittenVersion): Promise<boolean>;
};

/** Who is let into object files, with everything that happened about it. */
export type ObjectAccess = {
  /** @param shareHash of the key of a link that is made with it */
  record(id: string, event: AccessEvent, shareHash: string | null): Promise<void>;
  history(id: string): Promise<readonly AccessEvent[]>;
};

/** Images of object files; they stay as long as the file's versions. */
export type ObjectImages = {
  /** @returns false when the file has as many as it may; one that it has already stays */
  add(id: string, image: FileImage, at: Date): Promise<boolean>;
  has(id: string, sha256: string): Promise<FileImage | null>;
  /** Files that it is private to; none when something else shows it, or nothing does. */
  privateTo(sha256: string): Promise<readonly string[]>;
};
