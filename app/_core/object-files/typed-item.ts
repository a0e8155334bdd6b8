import type { Typed } from "../questions/typed-text.ts";

/** An item of a file as its form shows it: every text and number by the name of its field. */
export function typedItem(item: object): Typed {
  const fields = Object.entries(item).flatMap(([name, value]): (readonly [string, string])[] => {
    if (typeof value === "string") return [[name, value]];
    if (typeof value === "number") return [[name, String(value)]];
    if (typeof value === "boolean") return [[name, value ? "on" : ""]];
    const texts = Array.isArray(value) && value.every((each) => typeof each === "string");
    return texts ? [[name, value.join(" ")]] : [];
  });
  return Object.fromEntries(fields);
}
