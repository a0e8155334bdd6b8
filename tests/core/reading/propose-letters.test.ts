import { expect, it } from "vitest";
import { proposeLetters } from "#core/reading/propose-letters";

const line = (text: string, sure = 0.99, doubtful = "") =>
  [...text].map((sign) => ({ sign, sure: doubtful.includes(sign) ? 0.3 : sure }));

it("writes doubtful letters as ?, and lines with a stroke between them", () => {
  const [proposal] = proposeLetters([{ along: "lines", lines: [line("BODKIN", 0.99, "K"), line("& SON")] }]);
  expect(proposal?.letters).toBe("BOD?IN / & SON");
  expect(proposal?.doubtful).toBe(1);
  // Nine sure letters and signs, one of 0.3; the space is none.
  expect(proposal?.sure).toBeCloseTo((9 * 0.99 + 0.3) / 10);
});

it("leaves lines out that hold no sure letter", () => {
  const [proposal] = proposeLetters([{ along: "lines", lines: [line("ROOK"), line("xy", 0.4)] }]);
  expect(proposal?.letters).toBe("ROOK");
});

it("proposes the same letters once, and a single letter never", () => {
  const readings = [
    { along: "lines" as const, lines: [line("LOW MILL")] },
    { along: "ring" as const, lines: [line("Low·Mill")] },
    { along: "ring" as const, lines: [line("M")] },
    { along: "ring" as const, lines: [line("M?????".replaceAll("?", "x"), 0.9, "x")] },
    { along: "ring" as const, lines: [] },
  ];
  expect(proposeLetters(readings).map(({ letters }) => letters)).toEqual(["LOW MILL"]);
});
