import type { EntryContent } from "#core/entries/entry";
import type { ActingMember } from "#core/members/member";
import type { EntryCommand } from "#core/review/command";
import type { RecordedRevision } from "#core/review/entry-event";

/** What becomes of an entry of the demo. */
export const FATES = [
  "verified",
  "under review",
  "disputed",
  "dismissed",
  "sent back",
  "upheld in part",
  "appealed",
  "appeal waiting",
  "not accepted",
  "superseded",
  "withdrawn",
  "locked for a week",
] as const;
export type Fate = (typeof FATES)[number];

/** An entry as a story needs to know it. */
export type Subject = {
  readonly slug: string;
  readonly content: EntryContent;
  /** The maker's name; empty for none. */
  readonly maker: string;
  readonly has: RecordedRevision["has"];
};

/** One thing that happens, so many hours after the entry was submitted. */
export type Step = { readonly after: number } & (
  | {
      readonly is: "command";
      /** @param newest id of the entry's newest revision */
      give(at: string, newest: string): EntryCommand;
    }
  | {
      readonly is: "revision";
      readonly by: ActingMember;
      readonly content: EntryContent;
      readonly summary: string;
    }
);

export type Story = {
  readonly entry: string;
  readonly fate: Fate;
  /** Hours before now at which the entry was submitted. */
  readonly age: number;
  /** In order. */
  readonly steps: readonly Step[];
};
