import { beforeAll, expect, inject, it } from "vitest";
import type { LookUpView } from "#core/look-ups/look-up";
import type { Alignment } from "#core/photographs/alignment";
import { askForLookUp } from "../setup/ask-for-look-up.ts";

const address = inject("appAddress");
let lookUp: LookUpView;
beforeAll(async () => {
  lookUp = await askForLookUp(address, "brandreth-sons-schooner");
});

const ask = (id: string, entry: string, photograph = "none") =>
  fetch(`${address}/api/look-ups/${id}/alignment?${new URLSearchParams({ entry, photograph })}`);

it("lays a look-up's photograph over the entry's, for anyone who has its address", async () => {
  const match = lookUp.matches.find(({ entry }) => entry.slug === "brandreth-sons-schooner");
  if (!match) throw new Error("The mark was not found again.");
  const answer = await ask(lookUp.id, match.entry.slug, match.photograph?.id);
  expect(answer.status).toBe(200);
  const alignment = (await answer.json()) as Alignment;
  expect(alignment.plausible).toBe(true);
  expect(alignment.inliers).toBeGreaterThanOrEqual(30);
  expect(alignment.points).toHaveLength(alignment.inliers);
  expect(alignment.homography).toHaveLength(9);
});

it("finds no way to lay it over another mark", async () => {
  const other = lookUp.matches.find(({ entry }) => !entry.slug.startsWith("brandreth"));
  if (!other) throw new Error("The look-up found one maker only.");
  const answer = await ask(lookUp.id, other.entry.slug, other.photograph?.id);
  expect(answer.status).toBe(200);
  expect(((await answer.json()) as Alignment).plausible).toBe(false);
});

it("has nothing to say of what is not there", async () => {
  const [match] = lookUp.matches;
  if (!match) throw new Error("The look-up found nothing.");
  expect((await ask("no-such-look-up", match.entry.slug, match.photograph?.id)).status).toBe(404);
  expect((await ask(lookUp.id, "no-such-entry", match.photograph?.id)).status).toBe(404);
  expect((await ask(lookUp.id, match.entry.slug, "no-such-photograph")).status).toBe(404);
});

it("answers a page while it aligns", async () => {
  const matches = lookUp.matches.filter(({ photograph }) => photograph !== null).slice(6, 12);
  expect(matches).toHaveLength(6);
  const order: string[] = [];
  const aligned = Promise.all(matches.map((m) => ask(lookUp.id, m.entry.slug, m.photograph?.id))).then(
    (answers) => {
      order.push("aligned");
      return answers.map(({ status }) => status);
    },
  );
  const page = await fetch(`${address}/about`);
  await page.text();
  order.push("page");
  expect(await aligned).toEqual([200, 200, 200, 200, 200, 200]);
  expect(order).toEqual(["page", "aligned"]);
});
