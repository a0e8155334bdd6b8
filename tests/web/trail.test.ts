import { readFileSync } from "node:fs";
import { expect, inject, it } from "vitest";
import { holderOf } from "#adapters/data-folder-lock";
import type { Link } from "#core/trail/link";
import type { Verified } from "#usecases/verify-trails";
import { askHost } from "../../scripts/ask-host.ts";
import { checkTrail } from "../setup/check-trail.ts";

const address = inject("appAddress");

const SLUG = JSON.parse(
  readFileSync(new URL("../../seed/demo/entries.jsonl", import.meta.url), "utf8").split("\n")[0] ?? "{}",
).key as string;

it("offers an entry's trail as a file that the printed script finds whole", async () => {
  const answer = await fetch(`${address}/entries/${SLUG}/trail.json`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get("content-type")).toContain("application/json");
  expect(answer.headers.get("content-disposition")).toBe(`attachment; filename="${SLUG}-trail.json"`);
  const text = await answer.text();
  const links = JSON.parse(text) as Link[];
  expect(links.map(({ type }) => type).slice(0, 2)).toEqual(["revision recorded", "submitted"]);

  expect(checkTrail(text)).toEqual({
    whole: true,
    said: `${links.length} links, all whole. Last hash: ${links.at(-1)?.hash}`,
  });
  expect(checkTrail(text.replace(SLUG, `${SLUG}x`)).whole).toBe(false);
});

it.each(["no-such-entry", "NOT%20A%20SLUG"])("has none for %s", async (slug) => {
  expect((await fetch(`${address}/entries/${slug}/trail.json`)).status).toBe(404);
});

it("is verified for the operator, as a whole and by entry", async () => {
  const holder = holderOf(inject("appData"));
  if (!holder) throw new Error("Nobody holds the data folder of the app under test.");
  const verify = async (entry: string | null) => {
    type Line = { readonly result?: Verified | null };
    for await (const { result } of askHost<Line>(holder, "/api/trails", { entry })) return result;
  };
  const all = await verify(null);
  expect(all?.faults).toEqual([]);
  expect(all?.trails).toBeGreaterThan(200);
  expect(await verify(SLUG)).toMatchObject({ trails: 1, faults: [] });
  expect(await verify("no-such-entry")).toBeNull();
});

it("is nobody else's business to verify", async () => {
  const asked = await fetch(`${address}/api/trails`, { method: "POST", body: "{}" });
  expect([asked.status, await asked.text()]).toEqual([404, ""]);
});

it.each([
  "vote",
  "answer",
  "withdraw",
  "challenge",
  "decide",
  "appeal",
  "appeal-vote",
  "hide",
  "merge",
  "lock",
  "undo",
])("refuses to %s for who is not signed in, keeps what was typed and leads back", async (act) => {
  const form = () => {
    const fields = new FormData();
    const typed = {
      revision: "r",
      choice: act === "vote" ? "support" : "overturn",
      basis: "other",
      reason: "It is as it is.",
      voter: "v",
      answer: "It is so.",
      claim: "duplicate",
      evidence: "It is another.",
      challenge: "c",
      ruling: "upheld",
      consequence: "no change",
      what: "text",
      field: "title",
      ground: "rights",
      into: SLUG,
      page: "/how-sure",
    };
    for (const [name, value] of Object.entries(typed)) fields.set(name, value);
    return fields;
  };
  const to = `${address}/api/entries/${SLUG}/${act}`;
  const json = await fetch(to, { method: "POST", body: form(), headers: { accept: "application/json" } });
  expect(json.status).toBe(401);
  const page = await fetch(to, { method: "POST", body: form(), redirect: "manual" });
  expect(page.status).toBe(303);
  expect(page.headers.get("location")).toMatch(/^\/how-sure\?form=[\w-]{22}$/);
});

it("knows no other act, and leads to no other host", async () => {
  const post = (act: string, page: string) => {
    const form = new FormData();
    form.set("page", page);
    return fetch(`${address}/api/entries/${SLUG}/${act}`, { method: "POST", body: form, redirect: "manual" });
  };
  expect((await post("crown", "/")).status).toBe(404);
  for (const page of ["//elsewhere.example", "https://elsewhere.example", "/../x", "/a?b=c"])
    expect((await post("vote", page)).headers.get("location")).toMatch(
      new RegExp(`^/entries/${SLUG}\\?form=`),
    );
});
