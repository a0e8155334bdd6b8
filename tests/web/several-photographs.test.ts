import { readFileSync } from "node:fs";
import { expect, inject, it } from "vitest";
import type { FieldError } from "#core/field-error";
import type { LookUpView } from "#core/look-ups/look-up";
import { photographsToTry } from "../setup/photographs-to-try.ts";

const address = inject("appAddress");

const photographOf = (entry: string): File => {
  const found = photographsToTry().find((each) => each.entry === entry);
  if (!found) throw new Error(`The demo has no photograph to try of ${entry}.`);
  return new File([readFileSync(found.path)], "mark.webp", { type: "image/webp" });
};
const schooner = photographOf("brandreth-sons-schooner");
const sun = photographOf("tessel-sun");

type Parts = readonly (readonly [string, string | File])[];

function send(parts: Parts, accept = "application/json"): Promise<Response> {
  const form = new FormData();
  for (const [name, value] of parts) form.append(name, value);
  return fetch(`${address}/api/look-ups`, { method: "POST", headers: { accept }, body: form });
}

async function answer(parts: Parts): Promise<LookUpView> {
  const response = await send(parts);
  expect(response.status).toBe(200);
  return (await response.json()) as LookUpView;
}

async function refusal(parts: Parts): Promise<{ status: number; error: FieldError }> {
  const response = await send(parts);
  const { error } = (await response.json()) as { error: FieldError };
  return { status: response.status, error };
}

it("answers several photographs of one mark by one ranking, each with its own frame", async () => {
  const view = await answer([
    ["photograph", schooner],
    ["photograph", schooner],
    ["x", ""],
    ["x", "20"],
    ["y", ""],
    ["y", "10"],
    ["width", ""],
    ["width", "200"],
    ["height", ""],
    ["height", "210"],
  ]);
  expect(view.photographs.map(({ mark }) => mark)).toEqual([1, 1]);
  // Where no frame was given, the whole and the place found for the mark were looked up.
  expect(["proposal", "nobody"]).toContain(view.photographs[0]?.framedBy);
  expect(view.photographs[1]).toMatchObject({
    framedBy: "person",
    region: { x: 20, y: 10, width: 200, height: 210, turn: 0 },
  });
  expect(view.matches[0]?.entry.slug).toBe("brandreth-sons-schooner");
  expect(view.matches[0]?.seen.map(({ photograph }) => photograph)).toEqual([1, 2]);
  expect(view.otherMarks).toEqual([]);
});

it("answers each mark of an object, by the number or by the field", async () => {
  const byNumber = await answer([
    ["photograph", schooner],
    ["photograph", sun],
    ["mark", "1"],
    ["mark", "2"],
  ]);
  const byField = await answer([
    ["photograph", schooner],
    ["other_photograph", sun],
  ]);
  for (const view of [byNumber, byField]) {
    expect(view.matches[0]?.entry.slug).toBe("brandreth-sons-schooner");
    expect(view.otherMarks.map(({ mark, matches }) => [mark, matches[0]?.entry.slug])).toEqual([
      [2, "tessel-sun"],
    ]);
  }
});

it("takes one photograph as it always did", async () => {
  const view = await answer([["photograph", schooner]]);
  expect(view.query).toEqual(view.photographs[0]);
  expect(view.photographs).toHaveLength(1);
  expect(view.makers).toEqual([]);
});

it("names the field, the rule and the value when there are too many of something", async () => {
  const seven = Array.from({ length: 7 }, () => ["photograph", schooner] as const);
  expect(await refusal(seven)).toEqual({
    status: 422,
    error: { field: "photograph", rule: "photographs-most", received: "7", params: { most: 6 } },
  });
  expect(
    await refusal([
      ["photograph", schooner],
      ["turn", "0"],
      ["turn", "90"],
    ]),
  ).toEqual({
    status: 422,
    error: { field: "turn", rule: "one-for-each", received: "2", params: { photographs: 1 } },
  });
  expect(
    await refusal([
      ["photograph", schooner],
      ["mark", "7"],
    ]),
  ).toMatchObject({ status: 422, error: { field: "mark", rule: "whole-number", received: "7" } });
});

it("says which of several photographs has something wrong", async () => {
  const text = new File(["a letter, not a photograph"], "mark.jpg", { type: "image/jpeg" });
  const { status, error } = await refusal([
    ["photograph", schooner],
    ["photograph", text],
  ]);
  expect(status).toBe(422);
  expect(error).toMatchObject({ field: "photograph", rule: "image-type", params: { photograph: 2 } });
  expect(error.received).toMatch(/^photograph 2: /);
});

it("refuses more than 60 MB together, also to someone without scripts", async () => {
  const large = () => new File([new Uint8Array(16 * 1024 * 1024)], "mark.jpg", { type: "image/jpeg" });
  const four: Parts = Array.from({ length: 4 }, () => ["photograph", large()] as const);
  expect(await refusal(four)).toMatchObject({
    status: 413,
    error: { field: "photograph", rule: "images-together", params: { limitMb: 60 } },
  });
  const page = await send(four, "text/html");
  expect(new URL(page.url).pathname).toBe("/look-up-refused");
  expect(await page.text()).toContain("60 MB");
});
