/** What a catalogue may have measured, or a person with a rule. */
export const CONVENTIONS = ["height-standing", "height-seated", "length", "width", "diameter"] as const;
export type Convention = (typeof CONVENTIONS)[number];

/** A line as catalogued: the sizes it was made in, and which way they were measured, when that is known. */
export type CataloguedLine = {
  readonly sizes: readonly CataloguedSize[];
  readonly convention: Convention | null;
};
export type CataloguedSize = { readonly name: string; readonly millimetres: number };

/** One measure taken of an object; `within` is how far off it may be to either side. */
export type Measurement = {
  readonly convention: Convention;
  readonly millimetres: number;
  readonly within: number;
};
