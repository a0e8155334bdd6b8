import { isSlug } from "../entries/slug.ts";
import type { FileCommand } from "./commands.ts";
import type { FileFields } from "./file-fields.ts";
import { LONGEST, MOST } from "./limits.ts";
import type { Finding, WrittenExplanation } from "./object-file.ts";
import { RUNGS, WEIGHTS } from "./vocabulary.ts";

/** Who makes a change, and when: from the session and the clock, never from the form. */
export type Stamp = { readonly by: Finding["by"]; readonly at: string };

const line = { longest: LONGEST.line };
const text = { longest: LONGEST.text };

/** `explanation-1-id`, `explanation-1-says`, `explanation-1-for`, `explanation-1-against` and so on; empty ones fall away. */
export function readAnomaly(read: FileFields): FileCommand {
  const explanations: WrittenExplanation[] = [];
  for (let n = 1; n <= MOST.explanations; n++) {
    const field = (part: string) => `explanation-${n}-${part}`;
    if (!["says", "for", "against"].some((part) => read.has(field(part)))) continue;
    explanations.push({
      id: read.id(field("id")),
      says: read.line(field("says"), { shortest: 1, ...line }),
      for: read.text(field("for"), text),
      against: read.text(field("against"), text),
    });
  }
  const says = read.text("says", { shortest: 3, ...text });
  return { is: "anomaly", item: { id: read.id(), says, explanations } };
}

export function readStance(read: FileFields): FileCommand | null {
  const weight = read.oneOf("weight", WEIGHTS);
  const item = {
    id: read.id(),
    anomaly: read.line("anomaly", { shortest: 1, longest: 500 }),
    explanation: read.line("explanation", { shortest: 1, ...line }),
    reason: read.text("reason", text),
  };
  return weight && { is: "stance", item: { ...item, weight } };
}

/** Reads a finding; an own date asks for its reasons, and every rung but the last for a maker. */
export function readFinding(read: FileFields, { by, at }: Stamp): FileCommand | null {
  const rung = read.oneOf("rung", RUNGS);
  const maker = read.line("maker", line);
  const makerSlug = read.raw("maker_slug");
  if (makerSlug !== "" && !isSlug(makerSlug)) read.refuse("maker_slug", "entry-address", makerSlug);
  const edtf = read.date("own_date");
  const typed = read.line("own_date", line);
  const reasons = read.text("own_date_reasons", text);
  if (rung && rung !== "not determined" && maker === "")
    read.refuse("maker", "rung-needs-maker", "", { rung });
  if (rung === "not determined" && maker !== "") read.refuse("maker", "rung-without-maker", maker);
  if (typed !== "" && reasons === "")
    read.refuse("own_date_reasons", "own-date-reasons", "", { date: typed });
  const rest = {
    ...{ maker, makerSlug: makerSlug || null, by, at },
    says: read.text("says", text),
    ownDate: edtf === null ? null : { edtf, typed, reasons },
    size: read.line("size", line) || null,
    doubts: read.text("doubts", text),
  };
  return rung && { is: "finding", finding: { ...rest, rung } };
}
