/** Rows of the demo as the import reads them: every value is a string, lists are parted by `; `. */
export interface MakerRow {
  key: string;
  name: string;
  kind: string;
  place: string;
  trades: string;
  active: string;
  other_names: string;
  note: string;
  follows: string;
  follows_how: string;
  sources: string;
}

export interface EntryRow {
  key: string;
  title: string;
  kind: string;
  field: string;
  maker: string;
  maker_part: string;
  words: string;
  emblem: string;
  frame: string;
  technique: string;
  material: string;
  place_on_object: string;
  colours: string;
  size_mm: string;
  period: string;
  period_from_reason: string;
  period_to_reason: string;
  description: string;
  distinguish: string;
  reproductions: string;
  preceded_by: string;
  followed_by: string;
  variant_of: string;
  imitated_by: string;
  citations: string;
  sources: string;
}

export interface PhotographRow {
  file: string;
  entry: string;
  shows: string;
  region: string;
  turn: string;
  pixels_per_mm: string;
  licence: string;
  credit: string;
  impression: string;
}

export interface TryRow {
  file: string;
  title: string;
  entry: string;
  note: string;
}

export const splitList = (value: string): string[] =>
  value
    .split(";")
    .map((part) => part.trim())
    .filter(Boolean);
