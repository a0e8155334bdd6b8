import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { unrelatedCosine } from "../../app/_ui/unrelated-cosine.ts";
import messages from "../../messages/en.json" with { type: "json" };

const model = JSON.parse(readFileSync("ml/model/model.json", "utf8")) as { name: string; version: string };

it("is the figure of the bundled model's card, and the one that the page about likeness names", () => {
  const figure = unrelatedCosine(`${model.name}@${model.version}`);
  const card = readFileSync("ml/model/CARD.md", "utf8");
  expect(card).toContain(`best reference of an absent mark lies at ${figure}`);
  expect(messages.about.likeness.is).toContain(String(figure));
});

it("is not known of another model", () => {
  expect(unrelatedCosine("others@2")).toBeNull();
});
