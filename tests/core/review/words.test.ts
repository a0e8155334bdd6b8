import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { TIES } from "#core/review/independence";
import messages from "../../../messages/en.json" with { type: "json" };
import { sentence } from "../../../scripts/error-sentences.ts";

const folder = fileURLToPath(new URL("../../../app/_core/review", import.meta.url));
const source = readdirSync(folder)
  .filter((name) => name.endsWith(".ts"))
  .map((name) => readFileSync(`${folder}/${name}`, "utf8"))
  .join("\n");

/** Fields and rules that stand as words in the source, and those that ties make. */
const refused = [
  ...[...source.matchAll(/refuse\(\s*"([\w-]+)",\s*"([\w-]+)"/g)].map(
    ([, field = "", rule = ""]) => [field, rule] as const,
  ),
  ...TIES.map((tie) => ["member", `tie-${tie.split(" ")[0]}`] as const),
  ...["reason", "answer", "evidence"].flatMap(
    (field) =>
      [
        [field, "text-shortest"],
        [field, "text-longest"],
      ] as const,
  ),
];

it("every refusal of a review has words for its field and its rule, and names what was received", () => {
  expect(refused.length).toBeGreaterThan(45);
  const fields: Readonly<Record<string, string>> = messages.fields;
  const rules: Readonly<Record<string, string>> = messages.rules;
  expect(refused.filter(([field]) => fields[field] === undefined)).toEqual([]);
  expect(refused.filter(([, rule]) => rules[rule] === undefined)).toEqual([]);
  const params = { next: 2, name: "Ansa", shortest: 20, longest: 5000, length: 3 };
  for (const [field, rule] of refused) {
    const words = sentence({ field: fields[field] ?? field, rule, received: "what-came", params });
    expect(words.startsWith(`${fields[field]}: `), words).toBe(true);
    expect(words, rule).toContain("what-came");
  }
});

it("a late vote is told that the review is over", () => {
  expect(sentence({ field: "Review", rule: "review-over", received: "verified" })).toBe(
    "Review: it is over, and takes no more votes, answers or withdrawals. Received after it had closed as “verified”.",
  );
});
