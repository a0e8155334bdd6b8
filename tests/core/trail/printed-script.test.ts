import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { hashOfValue } from "#adapters/canonical-json";
import { linksAfter, type TrailEvent } from "#core/trail/chain";

const developers = readFileSync(new URL("../../../DEVELOPERS.md", import.meta.url), "utf8");
const script = /```js\n(\/\/ node check-trail\.mjs[\s\S]*?)```/.exec(developers)?.[1] ?? "";

const folder = mkdtempSync(join(tmpdir(), "countermark-printed-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const by = { id: "018f0000-0000-7000-8000-000000000000", name: "Ansa Hollín" };
const at = "2026-11-27T06:20:00.000Z";
const events = [
  {
    type: "revision recorded",
    at,
    by,
    revision: { number: 1, parents: [], share: 0.1, ö: "€", "1": null },
  },
  { type: "vote cast", at, by, reason: 'It says "HARL"\non two lines \u0007.', counts: 1e21 },
  { type: "locked", at, by, reason: "𝄞" },
];
const links = linksAfter("entry:1", null, events satisfies readonly TrailEvent[], hashOfValue);

function run(trail: unknown): { readonly status: number | null; readonly said: string } {
  const [program, file] = [join(folder, "check-trail.mjs"), join(folder, "trail.json")];
  writeFileSync(program, script);
  writeFileSync(file, JSON.stringify(trail, null, 2));
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, file], { encoding: "utf8" });
  return { status, said: stdout + stderr };
}

it("is about thirty lines", () => {
  expect(script.trim().split("\n").length).toBeLessThanOrEqual(32);
});

it("finds a trail whole", () => {
  expect(run(links)).toEqual({
    status: 0,
    said: `3 links, all whole. Last hash: ${links.at(-1)?.hash}\n`,
  });
});

it.each([
  [
    "a changed payload",
    links.map((l, i) => (i === 1 ? { ...l, payload: { reason: "forged" } } : l)),
    2,
    "changed",
  ],
  [
    "another name",
    links.map((l, i) => (i === 0 ? { ...l, by: { ...by, name: "Another" } } : l)),
    1,
    "changed",
  ],
  ["a link taken out", [links[0], links[2]], 2, "missing"],
  ["links in another order", [links[1], links[0], links[2]], 1, "missing"],
  [
    "a link put in between",
    [links[0], { ...links[2], number: 2, hash: links[2]?.hash ?? "" }],
    2,
    "does not follow",
  ],
])("finds %s", (_, trail, number, why) => {
  const { status, said } = run(trail);
  expect(status).toBe(1);
  expect(said).toMatch(new RegExp(`^Broken at link ${number}: .*${why}`));
});
