import type { DatedEvent, Evidence, EvidenceKind } from "#core/dating/evidence";
import type { Prior } from "#core/dating/prior";
import { piece } from "./evidence.ts";

/** A worked case as its document tells it. */
export type WorkedCase = {
  readonly title: string;
  readonly prior: Prior;
  readonly evidence: readonly Evidence[];
  /** What must come out, each with its value, as written. */
  readonly comesOut: readonly (readonly [string, string])[];
};

/** Reads a document with a table of evidence, a line that names the prior, and a table of what comes out. */
export function readCase(markdown: string): WorkedCase {
  const title = /^# (.+)$/m.exec(markdown)?.[1];
  const prior = /^Prior: (.+)$/m.exec(markdown)?.[1];
  const [pieces, results] = tablesOf(markdown);
  if (!title || !prior || !pieces || !results)
    throw new Error("A case needs a title, a prior and two tables.");
  const [head = [], ...rows] = pieces;
  const evidence = rows.map((row) => {
    const cell = (name: string) => row[head.indexOf(name)] ?? "";
    return piece(
      cell("id"),
      [cell("kind") as EvidenceKind, cell("event") as DatedEvent],
      cell("date"),
      Number(cell("reliability")),
      {
        or: cell("or") === "" ? [] : cell("or").split(", "),
        group: cell("group") || null,
        reason: cell("what"),
      },
    );
  });
  const comesOut = results.slice(1).map(([what = "", value = ""]) => [what, value] as const);
  return { title, prior: readPrior(prior), evidence, comesOut };
}

function readPrior(text: string): Prior {
  const years = /^years, (\d+) to (\d+)$/.exec(text);
  if (years) return { kind: "years", from: Number(years[1]), to: Number(years[2]) };
  const widest = /^widest, (\d+)$/.exec(text);
  if (widest) return { kind: "widest", thisYear: Number(widest[1]) };
  throw new Error(`Not a prior: ${text}`);
}

type Table = readonly (readonly string[])[];

function tablesOf(markdown: string): readonly Table[] {
  return markdown
    .split(/\n\n+/)
    .filter((block) => block.startsWith("|"))
    .map((block) =>
      block
        .trim()
        .split("\n")
        .filter((line) => !/^\|[\s|-]+\|$/.test(line))
        .map((line) =>
          line
            .slice(1, -1)
            .split("|")
            .map((cell) => cell.trim()),
        ),
    );
}
