import { entry, hash, id, pin, type Typed } from "./story.ts";

export const SCHOONER = entry("brandreth-sons-schooner", {
  title: "Schooner in a ring",
  maker: { slug: "brandreth-and-sons", name: "Brandreth & Sons" },
  period: "1919/1931",
  placeOnObject: "under the hull",
  marksPerObject: 1,
});
export const SHOP = entry("lund-lamp-label", {
  title: "Crane's toy shop, label",
  kind: "label",
  makerPart: "retailed",
  maker: { slug: "crane", name: "Crane's toy shop" },
  period: "1934/1952",
  revision: { id: id(501), number: 3, contentHash: hash(2) },
});
const LOOK_UP = { look_up: id(700), model_name: "marks", model_version: "7", probability: "0.93" };

const OBJECT: readonly Typed[] = [
  [
    "describe",
    {
      title: "Clockwork steamer from the attic",
      family: "tin and wooden toys",
      description:
        "A clockwork steamer of lithographed tin in red and cream, with one funnel, two masts and a fixed key under the hull. It came with a receipt, a page of an album and a letter.",
    },
  ],
  [
    "line",
    {
      name: "Steamers, second series",
      sizes: "24, 32",
      unit: "cm",
      when: "1920/1928",
      source: "An invented catalogue, 1922, page 14",
    },
  ],
  ["measurement", { id: id(1), measured: "length", amount: "28.1", unit: "cm" }],
  [
    "measurement",
    { id: id(2), measured: "height-standing", amount: "9 1/2", unit: "in", base: "without base" },
  ],
  ["measurement", { id: id(8), measured: "weight", amount: "0.61", unit: "kg" }],
  [
    "mark",
    {
      id: id(3),
      kind: "mark",
      technique: "printed",
      place: "deck, aft",
      description: "Printed in black on cream",
    },
  ],
  pin(3, SCHOONER, LOOK_UP),
  [
    "mark",
    {
      id: id(4),
      kind: "mark",
      technique: "printed",
      place: "under the hull",
      description: "The same once more, rubbed",
    },
  ],
  pin(4, SCHOONER, LOOK_UP),
  [
    "mark",
    {
      id: id(5),
      kind: "label",
      technique: "paper",
      place: "stern",
      words: "CRANE'S",
      belongs: "added later",
    },
  ],
  pin(5, SHOP, { ...LOOK_UP, probability: "0.88" }),
];

const EXAMINED: readonly Typed[] = [
  ["observation", { id: id(6), observed: "seen", point: "tin-colour", option: "litho" }],
  ["observation", { id: id(12), observed: "seen", point: "tin-joining", option: "tabs" }],
  [
    "observation",
    { id: id(13), observed: "seen", point: "tin-works", option: "clockwork", note: "Runs for 40 seconds." },
  ],
  ["observation", { id: id(7), observed: "absent", point: "tin-repair" }],
  ["observation", { id: id(14), observed: "absent", point: "tin-recent" }],
  [
    "condition",
    { id: id(10), condition: "worn", extent: "slight", place: "keel", note: "Bright metal along the edge." },
  ],
  ["condition", { id: id(11), condition: "loss", extent: "moderate", place: "stern mast" }],
];

const LETTER = `My grandfather had it for Christmas 1913, and nobody else was allowed to wind it. ${"He sailed it on the mill pond, and once it went over the weir and was brought home by the miller. ".repeat(30)}`;

const PROVENANCE: readonly Typed[] = [
  [
    "document",
    {
      ...{ id: id(20), kind: "receipt", title: "Receipt of a shop in Orle", when: "1924-12-19" },
      ...{
        transcription: "1 steamer, tin, with key, 8/6. Paid.",
        kept_at: "with the object",
        vouched_by: "Mara Osk",
      },
    },
  ],
  [
    "document",
    {
      id: id(21),
      kind: "album page",
      title: "Album page, boat on a pond",
      when: "summer 1926",
      vouched_by: "Mara Osk",
    },
  ],
  [
    "document",
    {
      ...{ id: id(22), kind: "letter", title: "Letter of a grandchild", when: "1979-02" },
      ...{ transcription: LETTER, vouched_by: "Mara Osk", kept_at: "Orle, in a drawer" },
    },
  ],
  [
    "event",
    {
      ...{ id: id(30), kind: "given", to: "Jonas Trell", when: "Christmas 1913", passage: "given to" },
      ...{ documents: id(22), told: "A present from an uncle at sea", qualifier: "by tradition" },
    },
  ],
  [
    "event",
    {
      id: id(31),
      kind: "sold",
      from: "a shop in Orle",
      to: "Edda Trell",
      when: "1924-12-19",
      passage: "sold to",
      documents: id(20),
    },
  ],
  [
    "event",
    {
      id: id(32),
      kind: "photographed",
      to: "Edda Trell",
      when: "1926",
      place: "the mill pond",
      documents: id(21),
    },
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
      gap_before: "on",
    },
  ],
];

function stance(n: number, explanation: string, weight: string, reason: string): Typed {
  return ["stance", { id: id(n), anomaly: `doubled-mark:${id(3)}+${id(4)}`, explanation, weight, reason }];
}

const JUDGED: readonly Typed[] = [
  [
    "anomaly",
    {
      ...{ id: id(40), says: "The red of the hull differs from that of the funnel." },
      ...{
        "explanation-1-id": id(41),
        "explanation-1-says": "Two batches of tin",
        "explanation-1-for": "Tabs are untouched.",
      },
      ...{
        "explanation-2-id": id(42),
        "explanation-2-says": "Funnel replaced",
        "explanation-2-against": "No trace of solder.",
      },
    },
  ],
  [
    "stance",
    {
      id: id(43),
      anomaly: id(40),
      explanation: id(41),
      weight: "likely",
      reason: "Tabs have been bent once.",
    },
  ],
  stance(44, "factory-habit", "possible", "Both were printed before the tin was bent."),
  stance(45, "later-forgery", "ruled out", "The second is as old as the first: one wear over both."),
  [
    "finding",
    {
      ...{ rung: "attributed to", maker: "Brandreth & Sons" },
      says: "Lithographed tin of the second series, with the schooner on the deck and once more under the hull. Construction, works and colour agree with what is known of the series; the label at the stern is a shop's and came later.",
      doubts: "Why the mark stands on it twice, and whether the letter remembers another boat.",
    },
  ],
];

/** A clockwork steamer of our own invention, told to the end. */
export const STEAMER: readonly Typed[] = [...OBJECT, ...EXAMINED, ...PROVENANCE, ...JUDGED];
