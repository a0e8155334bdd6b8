import { readSizeForm, UNITS } from "../sizes/read-size-form.ts";
import type { FileFields } from "./file-fields.ts";
import { LONGEST } from "./limits.ts";
import type { FileLine } from "./object-file.ts";

/** Reads the line an object is compared with; without a name there is none. */
export function readLine(read: FileFields): FileLine | null {
  const name = read.line("name", { longest: LONGEST.line });
  if (name === "") return null;
  const unit = read.choice("unit", UNITS);
  const { line, errors } = readSizeForm({
    sizes: read.raw("sizes"),
    unit,
    catalogue: read.raw("catalogue"),
  });
  read.errors.push(...errors);
  const made = read.date("when");
  const source = read.line("source", { longest: LONGEST.line });
  // "17" alone would lose its unit in a sentence.
  const sizes = line.sizes.map((size) => ({ ...size, name: `${size.name} ${unit}` }));
  return { ...line, sizes, name, made, source };
}
