import type { ReportSource } from "#core/object-files/report/parts";
import { entry, fileOf, hash, id, pin, THIS_YEAR, type Typed } from "./story.ts";

const gull = entry("gull-in-ring", {
  title: "Gull in a ring",
  period: "1919/1931",
  placeOnObject: "on the deck",
  marksPerObject: 1,
});
const shop = entry("cranes-toy-shop", {
  title: "Crane's toy shop, label",
  kind: "label",
  makerPart: "retailed",
  maker: { slug: "crane", name: "Crane's toy shop" },
  period: "1934/1952",
  revision: { id: id(501), number: 3, contentHash: hash(2) },
});
const LOOK_UP = { look_up: id(700), model_name: "marks", model_version: "7", probability: "0.93" };

/** A clockwork boat of our own invention: a doubled mark, a label too young, a letter that remembers too early. */
const STORY: readonly Typed[] = [
  [
    "describe",
    { title: "Clockwork steamer", family: "tin and wooden toys", description: "A steamer from an attic." },
  ],
  [
    "line",
    {
      name: "Steamers, second series",
      sizes: "24, 32",
      unit: "cm",
      when: "1920/1928",
      source: "An invented catalogue",
    },
  ],
  ["measurement", { id: id(1), measured: "length", amount: "28.1", unit: "cm" }],
  ["measurement", { id: id(2), measured: "height-standing", amount: "24.2", unit: "cm" }],
  ["mark", { id: id(3), kind: "mark", technique: "printed", place: "deck", words: "" }],
  pin(3, gull, LOOK_UP),
  ["mark", { id: id(4), kind: "mark", technique: "stamped", place: "under the hull" }],
  pin(4, gull, LOOK_UP),
  ["mark", { id: id(5), kind: "label", technique: "paper", place: "stern", words: "Crane's" }],
  pin(5, shop, { probability: "0.88" }),
  ["observation", { id: id(6), observed: "seen", point: "tin-colour", option: "litho" }],
  ["observation", { id: id(7), observed: "absent", point: "tin-repair" }],
  ["condition", { id: id(10), condition: "worn", extent: "slight", place: "keel" }],
  ["document", { id: id(20), kind: "receipt", title: "Receipt", when: "1924-12-19" }],
  [
    "document",
    {
      id: id(22),
      kind: "letter",
      title: "Letter of a grandchild",
      when: "1979-02",
      transcription: `He had it for Christmas 1913. ${"He sailed it on the pond. ".repeat(600)}`,
    },
  ],
  [
    "event",
    {
      id: id(30),
      kind: "given",
      to: "Jonas Trell",
      when: "Christmas 1913",
      documents: id(22),
      told: "A gift",
    },
  ],
  [
    "event",
    { id: id(31), kind: "sold", from: "a shop", to: "Edda Trell", when: "1924-12-19", documents: id(20) },
  ],
  [
    "event",
    {
      id: id(33),
      kind: "inherited",
      from: "Edda Trell",
      to: "Mara Osk",
      when: "1979",
      passage: "by descent to",
    },
  ],
  [
    "finding",
    { rung: "attributed to", maker: "Pell & Daughters", says: "Lithographed tin of the second series." },
  ],
];

export function boatSource(photographs: ReportSource["kept"]["content"]["photographs"] = []): ReportSource {
  return {
    kept: {
      id: id(99),
      owner: { id: id(900), name: "Ottoline Sarn" },
      version: 21,
      hash: hash(33),
      updatedAt: new Date("2026-11-20T10:00:00Z"),
      content: { ...fileOf("tin and wooden toys", ...STORY), photographs },
    },
    entries: [gull, shop],
    thisYear: THIS_YEAR,
    references: {},
    host: "https://marks.example",
    tables: { rules: hash(44), decoders: hash(45), checklist: hash(46) },
    language: "en-GB",
  };
}
