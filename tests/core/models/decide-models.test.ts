import { describe, expect, it } from "vitest";
import {
  answeringModel,
  decideAtStart,
  decideRemoval,
  decideSwitch,
  modelsForNewPhotographs,
} from "#core/models/decide-models";
import type { KnownModel, ModelState } from "#core/models/known-model";

const at = (day: number) => new Date(Date.UTC(2026, 0, day));
const known = (model: string, state: ModelState, day = 1): KnownModel => ({
  model,
  dimension: 256,
  state,
  since: at(day),
});
const place = (model: string) => ({ model, dimension: 256 });
const change = (model: string, state: ModelState) => ({ model, dimension: 256, state });

describe("given a host that starts", () => {
  it.each([
    ["nothing is known: the model in place answers", [], "a@1.0.0", [change("a@1.0.0", "answering")]],
    ["its model answers already: nothing changes", [known("a@1.0.0", "answering")], "a@1.0.0", []],
    [
      "another answers: the model in place is filled",
      [known("a@1.0.0", "answering")],
      "a@2.0.0",
      [change("a@2.0.0", "filling")],
    ],
    [
      "its model is being filled already: nothing changes",
      [known("a@1.0.0", "answering"), known("a@2.0.0", "filling")],
      "a@2.0.0",
      [],
    ],
    [
      "a third is in place: the one half filled is given up first",
      [known("a@1.0.0", "answering"), known("a@2.0.0", "filling")],
      "a@3.0.0",
      [change("a@2.0.0", "retired"), change("a@3.0.0", "filling")],
    ],
    [
      "the old one is put back while the new one is filled: the new one is given up",
      [known("a@1.0.0", "answering"), known("a@2.0.0", "filling")],
      "a@1.0.0",
      [change("a@2.0.0", "retired")],
    ],
    [
      "a retired one is put back: it is filled up again",
      [known("a@1.0.0", "retired"), known("a@2.0.0", "answering")],
      "a@1.0.0",
      [change("a@1.0.0", "filling")],
    ],
  ])("when %s", (_, models, inPlace, then) => {
    expect(decideAtStart(models, place(inPlace))).toEqual(then);
  });
});

describe("given a model that is being filled", () => {
  const models = [known("a@1.0.0", "answering"), known("a@2.0.0", "filling")];
  const over = [change("a@1.0.0", "retired"), change("a@2.0.0", "answering")];

  it("the old one answers, and new photographs get vectors of both", () => {
    expect(answeringModel(models, "a@2.0.0")).toBe("a@1.0.0");
    expect(modelsForNewPhotographs(models, "a@2.0.0")).toEqual(["a@1.0.0", "a@2.0.0"]);
  });

  it.each([
    ["one photograph lacks its vector: not yet", { done: 9, of: 10 }, 0, []],
    ["all have one: it takes over, the old one first retired", { done: 10, of: 10 }, 0, over],
    ["there are no photographs: it takes over", { done: 0, of: 0 }, 0, over],
    ["the rest is to be left out: it takes over", { done: 8, of: 10 }, 2, over],
    ["fewer were to be left out than are missing: not yet", { done: 7, of: 10 }, 2, []],
    ["more than half would be left out: not at all", { done: 4, of: 10 }, 6, []],
  ])("when %s", (_, filled, leftOut, then) => {
    expect(decideSwitch(models, filled, leftOut)).toEqual(then);
  });

  it("nothing switches the second time", () => {
    const after = [known("a@1.0.0", "retired"), known("a@2.0.0", "answering")];
    expect(decideSwitch(after, { done: 10, of: 10 })).toEqual([]);
  });
});

describe("given retired models", () => {
  const models = [
    known("a@1.0.0", "retired", 1),
    known("a@2.0.0", "retired", 5),
    known("a@3.0.0", "answering", 1),
  ];

  it.each([
    [7, 7, []],
    [8, 7, ["a@1.0.0"]],
    [12, 7, ["a@1.0.0", "a@2.0.0"]],
    [5, 0, ["a@1.0.0", "a@2.0.0"]],
  ])("on day %i, kept for %i days, those go: %j", (day, days, then) => {
    expect(decideRemoval(models, at(day), days)).toEqual(then);
  });
});

it("a reference that no model has answered for is answered for by the model in place", () => {
  expect(answeringModel([], "a@1.0.0")).toBe("a@1.0.0");
  expect(modelsForNewPhotographs([], "a@1.0.0")).toEqual(["a@1.0.0"]);
});
