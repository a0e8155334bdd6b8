import { isValid } from "@edtf-ts/core";

/**
 * Is this one EDTF date (no interval, no set)? The kept parser judges, with its faults mended (seen in version 0.4.2):
 * it knows no southern seasons, no season of a year before 0 and no mark before a negative year, takes -0000 for a
 * year, and checks no offset from UTC. What a date spans it is not asked: it takes the year 0000 for 1900 and ends at
 * the year 275760.
 */
export function isDateInEdtf(text: string): boolean {
  if (/-0000/.test(text) || /[/,[\]{}\s]/.test(text)) return false;
  const offset = /T.*[+-](\d\d)(?::(\d\d))?$/.exec(text);
  if (offset && (Number(offset[1]) > 23 || Number(offset[2] ?? 0) > 59)) return false;
  const [, mark = "", rest = text] = /^([?~%]?)-(.*)$/.exec(text) ?? [];
  const asked = (mark + rest).replace(/^(\W?[\dX]{4}\W?-\W?)(?:2[1-9]|3[0-2])(?=\W?$)/, "$121");
  return isValid(asked);
}
