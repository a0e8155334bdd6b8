import type { FileCommand } from "./commands.ts";
import type { FileFields } from "./file-fields.ts";
import { LONGEST } from "./limits.ts";
import { readAmount } from "./measure.ts";
import { measureByScale } from "./measure-by-scale.ts";
import type { FileMeasurement, Stretch } from "./object-file.ts";
import { BASES_MEASURED, MEASURED, type Measured } from "./vocabulary.ts";

/** Reads a measure as it was typed, in whatever unit. */
export function readMeasurement(read: FileFields): FileCommand | null {
  const measured = read.oneOf("measured", MEASURED);
  const rest = readRest(read);
  if (!measured) return null;
  const unit = read.raw("unit") || (measured === "weight" ? "g" : "mm");
  const amount = readAmount({ amount: read.raw("amount"), unit, within: read.raw("within") }, measured);
  if (!amount.ok) {
    read.errors.push(amount.error);
    return null;
  }
  return { is: "measurement", item: { ...rest, measured, ...amount.value, onScreen: null } };
}

/** Reads two points on a scale and two on the object, and works the length out. */
export function readOnScreen(read: FileFields): FileCommand | null {
  const measured = read.oneOf<Measured>(
    "measured",
    MEASURED.filter((each) => each !== "weight"),
  );
  const rest = readRest(read);
  const onScreen = {
    photograph: read.id("photograph"),
    scale: readStretch(read, "scale"),
    scaleMm: read.number("scale_mm", 0.1, 10_000),
    object: readStretch(read, "object"),
    pointWithin: read.optionalNumber("point_within", 0.1, 100) ?? POINT_WITHIN,
  };
  if (read.errors.length > 0 || !measured) return null;
  const length = measureByScale(onScreen);
  if (!length.ok) {
    read.errors.push(length.error);
    return null;
  }
  const [amount, within] = [length.value.millimetres, length.value.within].map(toHundredths);
  if (amount === undefined || within === undefined) return null;
  return { is: "measurement", item: { ...rest, measured, amount, within, typed: "", onScreen } };
}

/** A careful finger on a photograph shown in full size. */
const POINT_WITHIN = 2;
const toHundredths = (mm: number) => Math.round(mm * 100) / 100;

function readRest(read: FileFields): Pick<FileMeasurement, "id" | "part" | "base" | "note"> {
  return {
    id: read.id(),
    part: read.line("part", { longest: LONGEST.line }),
    base: read.choice("base", BASES_MEASURED),
    note: read.text("note", { longest: LONGEST.text }),
  };
}

/** `scale_x1`, `scale_y1`, `scale_x2`, `scale_y2`. */
function readStretch(read: FileFields, name: string): Stretch {
  const point = (n: number) => ({
    x: read.number(`${name}_x${n}`, 0, 100_000),
    y: read.number(`${name}_y${n}`, 0, 100_000),
  });
  return [point(1), point(2)];
}
