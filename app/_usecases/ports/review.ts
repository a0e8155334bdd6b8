import type { EntryContent } from "#core/entries/entry";
import type { Field } from "#core/entries/vocabulary";
import type { FieldError } from "#core/field-error";
import type { Photograph } from "#core/photographs/photograph";
import type { Result } from "#core/result";
import type { EntryEvent, RecordedRevision } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import type { EntryLink, UnderReview } from "#core/review/review-lists";
import type { TrailEvent } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import type { PhotographToRecord } from "../ports.ts";

/** An entry with what its trail amounts to. */
export type TracedEntry = { readonly id: string; readonly slug: string; readonly history: EntryHistory };

/** An entry that says something else than its trail. */
export type KeptBeside = {
  readonly id: string;
  readonly slug: string;
  /** What of its row or its revisions differs. */
  readonly differs: readonly string[];
};

/** An entry recorded before there were trails: its revisions, oldest first. */
export type Untraced = {
  readonly slug: string;
  readonly revisions: readonly {
    readonly revision: RecordedRevision;
    readonly at: string;
    readonly by: string;
  }[];
};

/** Trails: append-only, each link chained to the one before. */
export type Trails = {
  /**
   * Decides on an entry's history with nobody else changing it meanwhile, adds what follows to its trail, and brings
   * what is kept beside it up to that, in one step.
   * @param entry slug
   */
  change(
    entry: string,
    decide: (history: EntryHistory) => Result<readonly EntryEvent[], FieldError>,
  ): Promise<Result<EntryHistory, FieldError>>;
  /** @param entry slug */
  history(entry: string): Promise<TracedEntry | null>;
  /** The id of an entry by its slug; its trail is named after it. */
  idOf(entry: string): Promise<string | null>;
  links(trail: string): Promise<readonly Link[]>;
  /** Names of all trails, in order, after the one given. */
  names(after: string | null, limit: number): Promise<readonly string[]>;
  /** Adds to a trail that is of no entry. */
  append(trail: string, events: readonly TrailEvent[]): Promise<void>;
  /** Compares entries' rows and revisions with their trails; only those that differ come back. */
  compare(entries: readonly string[]): Promise<readonly KeptBeside[]>;
  /** Entries that have no trail yet. */
  lacking(limit: number): Promise<readonly Untraced[]>;
};

/** What of an entry's content can be hidden, and what is. */
export type Contents = {
  /** SHA-256 of a photograph or a text of an entry; null when it has none such. */
  hashOf(
    entry: string,
    what:
      | { readonly kind: "photograph"; readonly photograph: string }
      | { readonly kind: "text"; readonly revision: string; readonly field: string },
  ): Promise<string | null>;
  /** Is the image hidden wherever it is shown? */
  isHiddenImage(sha256: string): Promise<boolean>;
  /** Slug of the entry that a merged one leads to; null for any other. */
  standsInstead(slug: string): Promise<string | null>;
};

/** Lists over all trails. */
export type ReviewLists = {
  /** Slugs of entries whose review is due to be looked at, longest due first. */
  due(now: Date, limit: number): Promise<readonly string[]>;
  /**
   * Revisions under review, the longest waiting first.
   * @param asked fields to keep to; null for all. The member who asks, to know whether they have voted
   */
  waiting(asked: {
    readonly fields: readonly Field[] | null;
    readonly member: string | null;
    readonly after: number;
    readonly limit: number;
  }): Promise<readonly UnderReview[]>;
  /** What a member did of these types ("revision recorded", "vote cast"), the latest first. */
  ofMember(
    member: string,
    types: readonly string[],
    after: number,
    limit: number,
  ): Promise<readonly EntryLink[]>;
  /** What moderators did, the latest first. */
  moderation(after: number, limit: number): Promise<readonly EntryLink[]>;
  /** Slugs of entries with a challenge that waits for its decision or its appeal, in the order of the alphabet. */
  challenged(limit: number): Promise<readonly string[]>;
  /** The entries last voted on, by id, each with how many links its trail has. */
  votedOn(limit: number): Promise<readonly { readonly id: string; readonly links: number }[]>;
  /** Histories by the ids of their entries. */
  histories(ids: readonly string[]): Promise<ReadonlyMap<string, EntryHistory>>;
};

/** A revision as a member wrote it, to be recorded and reviewed. */
export type WrittenRevision = {
  /** Slug of the entry that it revises; null for a new one. */
  readonly entry: string | null;
  readonly content: EntryContent;
  /** In the order in which they are shown; their images are kept already. */
  readonly photographs: readonly Omit<Photograph, "id">[];
  /** Ids of the revisions it was made from. */
  readonly parents: readonly string[];
  readonly summary: string;
  /** Members besides the one who submits it. */
  readonly coAuthors: readonly string[];
};

/** A revision that a member puts forward; its images are kept already. */
export type RevisionToSubmit = {
  readonly entry: { readonly slug: string; readonly isNew: boolean };
  readonly content: EntryContent;
  readonly photographs: readonly PhotographToRecord[];
  /** Ids of the revisions it was made from. */
  readonly parents: readonly string[];
  /** Members who wrote it, the one who submits it first. */
  readonly authors: readonly string[];
  readonly createdBy: string;
  readonly summary: string;
  readonly at: string;
};

/** Where members' revisions are recorded. */
export type Submissions = {
  /**
   * Records a revision and what follows from it, in one step.
   * @param decide what its trail takes
   * @returns as the error, why it is refused; nothing is recorded then
   */
  record(
    revision: RevisionToSubmit,
    decide: (
      events: readonly EntryEvent[],
      recorded: RecordedRevision,
    ) => Result<readonly EntryEvent[], FieldError>,
  ): Promise<
    Result<{ readonly slug: string; readonly revision: string; readonly number: number }, FieldError>
  >;
};
