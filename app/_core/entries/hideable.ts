/** Texts of a revision that moderators can hide. */
export const HIDEABLE = [
  "title",
  "words",
  "emblem",
  "frame",
  "placeOnObject",
  "periodFromReason",
  "periodToReason",
  "description",
  "distinguish",
  "reproductions",
] as const;
export type Hideable = (typeof HIDEABLE)[number];

export const isHideable = (field: string): field is Hideable => HIDEABLE.some((each) => each === field);
