import { describe, expect, it } from "vitest";
import { joinInitials } from "#core/entries/initials";

describe("initials", () => {
  it.each([
    ["J·K", ["jk"]],
    ["C E C O", ["ceco"]],
    ["H.C.CO.", ["hcco", "hc"]],
    ["T B / CARNHYTHE", ["tb"]],
    ["VOSS", []],
    ["", []],
  ])("of “%s” are looked for as %j", (words, forms) => {
    expect(joinInitials(words)).toEqual(forms);
  });
});
