import { type Region, withMargin } from "./region.ts";

/** A place in a photograph where a mark may be. */
export type Proposal = {
  /** In pixels of the upright photograph. */
  readonly region: Region;
  /** The probability that it overlaps the mark's box by half or more, 0 to 1. */
  readonly confidence: number;
};

/** A proposal below this is not framed unasked. */
const CONFIDENT = 0.5;

/** Is it likelier than not that the mark is there? */
export const isConfident = ({ confidence }: Proposal): boolean => confidence >= CONFIDENT;

/**
 * The frame for a proposed region: with a little room around it, as references are embedded, so that a box that is a
 * little too small still holds the mark.
 */
export const framed = (region: Region, image: { width: number; height: number }): Region =>
  withMargin(region, image);
