import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { type Estimate, estimate } from "#core/dating/estimate";
import { reasonsOf } from "#core/dating/reasons";
import { chance } from "./evidence.ts";
import { readCase, type WorkedCase } from "./read-case.ts";

const folder = fileURLToPath(new URL("cases", import.meta.url));
const documents = readdirSync(folder).sort();

/** What an estimate says under the name that a document gives it, written as the document writes it. */
function said(what: string, expected: string, found: Estimate, { evidence, prior }: WorkedCase): string {
  const share = /^(50|80|95) in 100( begins)?$/.exec(what);
  if (share) return saidOfSpan(found.shortest[Number(share[1]) as 50], share[2] !== undefined, expected);
  const reasons = reasonsOf(found, evidence);
  switch (what) {
    case "not before":
      return found.notBefore ? `${found.notBefore.day} by ${found.notBefore.evidenceIds.join(", ")}` : "none";
    case "not after":
      return found.notAfter ? `${found.notAfter.day} by ${found.notAfter.evidenceIds.join(", ")}` : "none";
    case "undisputed":
      return found.undisputed.notBefore || found.undisputed.notAfter ? "some" : "none";
    case "contradictions":
      return found.conflicts.map((set) => set.join(", ")).join("; ") || "none";
    case "median":
      return found.median === null ? "none" : String(Math.floor(found.median));
    case "tells most":
      return reasons[0]?.evidenceId ?? "none";
    case "tells nothing":
      return reasons.find(({ strength }) => strength === "nothing")?.evidenceId ?? "none";
    case "would narrow most":
      return found.wouldNarrow[0]?.candidate ?? "none";
    case "likelier":
      return likelier(found, expected);
    case "without group, likelier":
      return likelier(
        estimate(
          evidence.map((piece) => ({ ...piece, group: null })),
          prior,
        ),
        expected,
      );
    default:
      throw new Error(`A case cannot say: ${what}`);
  }
}

function saidOfSpan({ ranges }: Estimate["shortest"][50], onlyBegins: boolean, expected: string): string {
  if (onlyBegins) {
    const before = Number(/^before (\d+)$/.exec(expected)?.[1]);
    return (ranges[0]?.from ?? Number.POSITIVE_INFINITY) < before ? expected : `${ranges[0]?.from}`;
  }
  if (expected === "several") return ranges.length > 1 ? "several" : "one";
  return ranges.map(({ from, to }) => (from === to ? `${from}` : `${from} to ${to}`)).join(" or ");
}

function likelier(found: Estimate, expected: string): string {
  const [, a, b, c, d] = /^(\d+) to (\d+) over (\d+) to (\d+)$/.exec(expected) ?? [];
  const [first, second] = [chance(found, Number(a), Number(b)), chance(found, Number(c), Number(d))];
  return first > second ? expected : `${c} to ${d} over ${a} to ${b}`;
}

it("there are ten worked cases", () => {
  expect(documents.length).toBeGreaterThanOrEqual(10);
});

describe.each(documents)("%s", (name) => {
  const worked = readCase(readFileSync(`${folder}/${name}`, "utf8"));
  const found = estimate(worked.evidence, worked.prior);

  it.each(worked.comesOut)(`${worked.title}: %s is %s`, (what, expected) => {
    expect(said(what, expected, found, worked)).toBe(expected);
  });
});
