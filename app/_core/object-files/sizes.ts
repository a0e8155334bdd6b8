import type { Making } from "../sizes/allowances.ts";
import { estimateSize, type SizeEstimate } from "../sizes/estimate-size.ts";
import { CONVENTIONS, type Measurement } from "../sizes/line.ts";
import type { ObjectFile } from "./object-file.ts";
import type { Family } from "./vocabulary.ts";

const MAKING: Readonly<Record<Family, Making>> = {
  "soft toys": "stuffed",
  "tin and wooden toys": "rigid",
  ceramics: "fired-clay",
  "silver and base metal": "rigid",
  glass: "rigid",
  "textiles and labels": "stuffed",
  "clocks and instruments": "rigid",
  furniture: "rigid",
};

/** Which of the line's sizes it has, by measures of the whole object; null where there is no line. */
export function sizesOf(file: ObjectFile): SizeEstimate | null {
  if (file.line === null) return null;
  return estimateSize(file.line, wholeMeasures(file), MAKING[file.family]);
}

/** A measure taken with a base that was not always there is no measure of the whole. */
function wholeMeasures({ measurements }: ObjectFile): readonly Measurement[] {
  return measurements.flatMap(({ measured, part, base, amount, within }) => {
    const convention = CONVENTIONS.find((each) => each === measured);
    if (!convention || part !== "" || base === "with base") return [];
    return [{ convention, millimetres: amount, within }];
  });
}
