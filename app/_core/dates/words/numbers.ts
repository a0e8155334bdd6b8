const ORDINALS = [
  "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth",
  "sixteenth seventeenth eighteenth nineteenth twentieth twenty-first",
]
  .join(" ")
  .split(" ");

const MONTHS = "january february march april may june july august september october november december".split(
  " ",
);

/** `3rd`, `third` or `3`; null when it is none. */
export function ordinal(text: string): number | null {
  const digits = /^(\d{1,2})(?:st|nd|rd|th)?$/.exec(text);
  if (digits) return Number(digits[1]);
  const place = ORDINALS.indexOf(text);
  return place === -1 ? null : place + 1;
}

/** `march`, `mar` or `sept.`; null when it is none. */
export function monthNumber(text: string): number | null {
  const name = text.replace(/\.$/, "");
  const place =
    name.length < 3
      ? -1
      : MONTHS.findIndex((month) => month.startsWith(name) || (name === "sept" && month === "september"));
  return place === -1 ? null : place + 1;
}

export const two = (n: number) => String(n).padStart(2, "0");
