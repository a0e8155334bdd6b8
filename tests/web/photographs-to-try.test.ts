import { readFile } from "node:fs/promises";
import { basename } from "node:path";
import { expect, inject, it } from "vitest";
import type { LookUpView } from "#core/look-ups/look-up";
import { photographsToTry } from "../setup/photographs-to-try.ts";

/** What the bundled model reaches on the demo, less one photograph of each kind for a change of no matter. */
const KNOWN_FIRST = 16;
const ABSENT_NONE_FITS = 5;

it("the photographs to try find their entries, and those of no entry find that none fits", async () => {
  const known: string[] = [];
  const absent: string[] = [];
  for (const { path, entry } of photographsToTry()) {
    const { matches, noneFits } = await lookUp(path);
    const first = matches[0]?.entry.slug;
    if (entry === null) absent.push(noneFits ? "none fits" : `${basename(path)}: ${first}`);
    else known.push(first === entry ? "first" : `${basename(path)}: ${entry}, but found ${first}`);
  }
  expect([known.length, absent.length]).toEqual([20, 10]);
  expect(known.filter((found) => found === "first").length, known.join("\n")).toBeGreaterThanOrEqual(
    KNOWN_FIRST,
  );
  expect(absent.filter((found) => found === "none fits").length, absent.join("\n")).toBeGreaterThanOrEqual(
    ABSENT_NONE_FITS,
  );
});

async function lookUp(path: string): Promise<LookUpView> {
  const form = new FormData();
  form.set("photograph", new File([await readFile(path)], basename(path)));
  const headers = { accept: "application/json" };
  const response = await fetch(`${inject("appAddress")}/api/look-ups`, {
    method: "POST",
    body: form,
    headers,
  });
  expect(response.status).toBe(200);
  return (await response.json()) as LookUpView;
}
