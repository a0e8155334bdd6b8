import type { EntryContent } from "./entry.ts";

type Later = "field" | "citations";
/** A content as it is stored and hashed: what older revisions had no place for is left out when it says nothing. */
export type StatedContent = Omit<EntryContent, Later> & Partial<Pick<EntryContent, Later>>;

/** The content of a stored revision; what it is too old to say is null or empty. */
export function contentOf(stored: unknown): EntryContent {
  const content = stored as StatedContent;
  return { ...content, field: content.field ?? null, citations: content.citations ?? [] };
}

/** The content to store and to hash: a revision that says neither has the hash that it had before there were these. */
export function statedContent({ field, citations, ...content }: EntryContent): StatedContent {
  return {
    ...content,
    ...(field === null ? {} : { field }),
    ...(citations.length === 0 ? {} : { citations }),
  };
}
