import { expect, it } from "vitest";
import { ANOMALIES } from "#core/object-files/derived";
import { differenceOfFiles } from "#core/object-files/difference-of-files";
import { emptyFile, type ObjectFile } from "#core/object-files/object-file";
import { nameOfField } from "../../../app/_ui/objects/change-words.ts";
import messages from "../../../messages/en.json" with { type: "json" };
import { entry, fileOf, hash, id, pin } from "./story.ts";

const words: Readonly<Record<string, string>> = messages.objectPages.history.fields;

/** A file with something in every field that it can have. */
function full(): ObjectFile {
  const file = fileOf(
    "tin and wooden toys",
    ["describe", { title: "A boat", family: "tin and wooden toys", description: "Of tin" }],
    [
      "line",
      { name: "Gull", when: "1914/1927", sizes: "17, 22", unit: "cm", catalogue: "length", source: "Book" },
    ],
    [
      "photograph",
      { id: id(1), sha256: hash(1), width: "8", height: "6", shows: "Port", credit: "Ada", of: "whole" },
    ],
    ["observation", { id: id(2), what: "A dent", observed: "seen", value: "deep", note: "Old" }],
    [
      "mark",
      { id: id(3), kind: "mark", technique: "stamped", place: "hull", words: "P&D", description: "Red" },
    ],
    pin(3, entry("gull-in-ring"), {
      ...{ look_up: id(4), model_name: "m", model_version: "1", probability: "0.9" },
      near: JSON.stringify([{ entry: "tern", title: "Tern", probability: 0.1 }]),
    }),
    [
      "document",
      {
        ...{
          id: id(5),
          kind: "letter",
          title: "A letter",
          when: "1931",
          transcription: "Dear",
          vouched_by: "Ada",
        },
        kept_at: "Home",
      },
    ],
    ["scan", { id: id(6), document: id(5), sha256: hash(2), type: "image/jpeg", name: "p. 1" }],
    [
      "event",
      {
        ...{
          id: id(7),
          kind: "given",
          when: "1921",
          place: "Marl",
          from: "Ada",
          to: "Bert",
          gap_before: "on",
        },
        ...{ passage: "given to", told: "At Easter", documents: id(5) },
      },
    ],
    ["pieces", { worksheet: "v=1&e=mk*k*1900*950*p*A*Mark*Book*Not+always*1910", ids: id(8) }],
    ["condition", { id: id(9), condition: "worn", extent: "slight", place: "bow", note: "Rubbed" }],
    [
      "anomaly",
      {
        ...{ id: id(10), says: "It smells", "explanation-1-id": id(11), "explanation-1-says": "Paint" },
        ...{ "explanation-1-for": "Smell", "explanation-1-against": "Wear" },
      },
    ],
    ["stance", { id: id(12), anomaly: id(10), explanation: id(11), weight: "likely", reason: "Nose" }],
    ["measurement", { id: id(13), measured: "length", amount: "22 cm", part: "hull", base: "no base" }],
    [
      "finding",
      {
        ...{ rung: "by", maker: "Pell", maker_slug: "pell", says: "So", own_date: "1920", doubts: "Few" },
        ...{ own_date_reasons: "Label", size: "22 cm" },
      },
    ],
  );
  const onScreen = {
    ...{ photograph: id(1), scaleMm: 50, pointWithin: 1 },
    scale: [
      { x: 0, y: 1 },
      { x: 1, y: 1 },
    ],
    object: [
      { x: 0, y: 2 },
      { x: 1, y: 2 },
    ],
  } as const;
  return { ...file, measurements: file.measurements.map((each) => ({ ...each, onScreen, note: "By eye" })) };
}

it("every field that a version can change has a name", () => {
  const before = emptyFile("", "ceramics");
  const changes = differenceOfFiles(before, full());
  const keys = [
    ...new Set(changes.flatMap(({ fields }) => fields.map(({ field }) => nameOfField(field).key))),
  ];
  expect(keys.length).toBeGreaterThan(80);
  expect(keys.filter((key) => words[key] === undefined)).toEqual([]);
  expect(Object.keys(messages.objectPages.history.anomalies)).toEqual([...ANOMALIES]);
  expect(
    Object.keys(words).filter((key) => ![...keys, "order", "point", "option", "item"].includes(key)),
  ).toEqual([]);
});

it("counts what stands in a list from one", () => {
  expect(nameOfField("explanations.1.says")).toEqual({ key: "explanations-says", place: 2 });
  expect(nameOfField("ownDate.edtf")).toEqual({ key: "ownDate-edtf", place: null });
});
