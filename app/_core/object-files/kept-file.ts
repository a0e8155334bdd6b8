import type { ObjectFile } from "./object-file.ts";

/** How far somebody is let into a file: its owner may let others in, `edit` may change it, `view` may read it. */
export type Access = "owner" | "edit" | "view";
export const WAYS = ["view", "edit"] as const;
export type Way = (typeof WAYS)[number];

export type Person = { readonly id: string; readonly name: string };
type Invited = Person & { readonly way: Way };

/** An object file as it is kept: its newest version, and who may see it. */
export type KeptFile = {
  readonly id: string;
  readonly owner: Person;
  readonly invited: readonly Invited[];
  /** Since when a link to it is out; null when there is none, or it was revoked. */
  readonly sharedAt: Date | null;
  readonly publishedAt: Date | null;
  readonly version: number;
  /** SHA-256 over the canonical JSON of the newest version's content. */
  readonly hash: string;
  readonly content: ObjectFile;
  readonly createdAt: Date;
  readonly updatedAt: Date;
};

/** A version as lists show it: what changed it, who, and when. */
export type FileVersion = {
  readonly number: number;
  readonly hash: string;
  /** The command that made it, as it was given. */
  readonly command: {
    readonly is: string;
    /** Of the version that was brought back. */
    readonly number?: number;
  };
  readonly at: Date;
  readonly by: Person;
};

/** A file as a member's list shows it. */
export type FileLine = {
  readonly id: string;
  readonly title: string;
  readonly family: string;
  readonly owner: Person;
  readonly access: Access;
  readonly updatedAt: Date;
  readonly published: boolean;
  /** The first photograph that was taken into it; null when there is none. */
  readonly image: FileImage | null;
};

/** An image that was judged, stripped and kept for a file. */
export type FileImage = { readonly sha256: string; readonly width: number; readonly height: number };

const ACCESS_EVENTS = [
  "invited to view",
  "invited to edit",
  "invitation ended",
  "link made",
  "link revoked",
  "published",
  "publication ended",
] as const;
/** Somebody was let into a file or shut out of it. */
export type AccessEvent = {
  readonly type: (typeof ACCESS_EVENTS)[number];
  /** Whom it is about; null for links and publishing. */
  readonly member: Person | null;
  readonly at: Date;
  readonly by: Person;
};

/** Most photographs and scans of one file: a hundred objects' worth is another file. */
export const MOST_FILE_IMAGES = 200;
/** Files that a member may own. */
export const MOST_FILES = 500;
