import { describe, expect, it } from "vitest";
import { changeFile, changeOn } from "#core/object-files/change-file";
import { COMMANDS, type FileCommand } from "#core/object-files/commands";
import { LONGEST, MOST } from "#core/object-files/limits";
import { emptyFile, type ObjectFile } from "#core/object-files/object-file";
import { readCommand } from "#core/object-files/read-command";
import { done, entry, faults, fileOf, hash, id, pin, refusedBy, STAMP, type Typed } from "./story.ts";

function command([name, fields]: Typed): FileCommand {
  const read = readCommand(name, fields, STAMP);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}
const letter = (n: number, more = {}): Typed => [
  "document",
  { id: id(n), kind: "letter", title: "A letter", ...more },
];
const mark = (n: number, more = {}): Typed => [
  "mark",
  { id: id(n), kind: "mark", place: "under the hull", ...more },
];
const gift = (n: number, from: string, to: string, more = {}): Typed => [
  "event",
  { id: id(n), kind: "given", from, to, ...more },
];
const photograph = (n: number, more = {}): Typed => [
  "photograph",
  { id: id(n), sha256: hash(n), width: "800", height: "600", ...more },
];

describe("a form of a file", () => {
  it.each([
    ["event", { id: id(1), kind: "given", when: "1921-02-30" }, "when date"],
    ["event", { id: id(1), kind: "given", when: "31 April 1921" }, "when date"],
    ["event", { id: id(1), kind: "given", when: "1925/1921" }, "when date"],
    ["event", { id: id(1), kind: "given", when: "2031" }, "when date-to-come"],
    ["event", { id: id(1), kind: "stolen" }, "kind one-of"],
    ["event", { id: "1", kind: "given" }, "id item-id"],
    ["event", { id: id(1), kind: "given", documents: `${id(2)}, 7` }, "documents item-id"],
    ["document", { id: id(1), kind: "letter", title: "" }, "title required"],
    ["document", { id: id(1), kind: "poem", title: "Ode" }, "kind one-of"],
    ["scan", { id: id(1), document: id(2), sha256: hash(1), type: "application/msword" }, "file scan-type"],
    ["scan", { id: id(1), document: id(2), sha256: hash(1), type: "application/pdf" }, "file scan-type"],
    ["scan", { id: id(1), document: id(2), sha256: "ab", type: "image/png" }, "sha256 sha256"],
    ["observation", { id: id(1), observed: "seen", what: "A dent" }, "value seen-with-value"],
    [
      "observation",
      { id: id(1), observed: "absent", what: "A dent", value: "deep" },
      "value value-only-seen",
    ],
    ["observation", { id: id(1), observed: "absent" }, "what point-or-what"],
    ["observation", { id: id(1), observed: "perhaps", what: "A dent" }, "observed one-of"],
    ["finding", { rung: "by" }, "maker rung-needs-maker"],
    ["finding", { rung: "not determined", maker: "Pell" }, "maker rung-without-maker"],
    ["finding", { rung: "by", maker: "Pell", own_date: "1920" }, "own_date_reasons own-date-reasons"],
    ["describe", { title: "ab", family: "ceramics" }, "title text-shortest"],
    ["describe", { title: "A jug", family: "jugs" }, "family one-of"],
    ["measurement", { id: id(1), measured: "girth", amount: "3" }, "measured one-of"],
    [
      "match",
      {
        mark: id(1),
        entry: "No Slug",
        title: "T",
        revision: id(2),
        revision_number: "1",
        content_hash: hash(2),
      },
      "entry entry-address",
    ],
    ["sing", {}, "command one-of"],
  ])("%s %j is refused: %s", (name, fields, fault) => expect(faults(name, fields)).toEqual([fault]));

  it("names every field that is wrong at once", () => {
    expect(faults("event", { id: "x", kind: "lost", when: "1921-13" })).toEqual([
      "kind one-of",
      "id item-id",
      "when date",
    ]);
  });

  it("takes a transcription of 5,000 words, and as much as it says", () => {
    const words = (n: number) => Array.from({ length: n }, (_, i) => `word${i % 10}`).join(" ");
    const file = fileOf("ceramics", letter(1, { transcription: words(5000) }));
    expect(file.documents[0]?.transcription.split(" ")).toHaveLength(5000);
    const most = "a".repeat(LONGEST.transcription);
    expect(faults(...letter(1, { transcription: most }))).toEqual([]);
    expect(faults(...letter(1, { transcription: `${most}a` }))).toEqual(["transcription text-longest"]);
  });

  it("reads dates as people write them, and keeps what was typed", () => {
    const file = fileOf("ceramics", gift(1, "", "Ada", { when: "Easter 1921" }));
    expect(file.events[0]).toMatchObject({ date: "1921-03-27", dateTyped: "Easter 1921" });
  });
});

describe("a change", () => {
  it("done twice is done once: the very same file", () => {
    const commands: readonly Typed[] = [
      ["describe", { title: "Tin boat", family: "tin and wooden toys" }],
      ["line", { name: "Gull", sizes: "17, 22", unit: "cm" }],
      letter(1),
      ["scan", { id: id(2), document: id(1), sha256: hash(2), type: "image/jpeg", name: "letter.jpg" }],
      mark(3),
      pin(3, entry("gull-in-ring")),
      photograph(4, { of: "mark", item: id(3) }),
      ["observation", { id: id(5), observed: "absent", point: "tin-repair" }],
      ["measurement", { id: id(6), measured: "length", amount: "22 cm" }],
      [
        "measure-on-screen",
        {
          id: id(7),
          measured: "width",
          photograph: id(4),
          scale_x1: "0",
          scale_y1: "0",
          scale_x2: "100",
          scale_y2: "0",
          scale_mm: "10",
          object_x1: "0",
          object_y1: "0",
          object_x2: "300",
          object_y2: "400",
        },
      ],
      gift(8, "Ada", "Ben", { documents: id(1) }),
      ["order", { event: id(8), before: "" }],
      ["condition", { id: id(9), condition: "worn" }],
      [
        "anomaly",
        {
          id: id(10),
          says: "It smells of paint",
          "explanation-1-id": id(11),
          "explanation-1-says": "Newly painted",
        },
      ],
      ["stance", { id: id(12), anomaly: id(10), explanation: id(11), weight: "likely" }],
      ["pieces", { worksheet: "v=1&e=mk*k*1900/1912*950", ids: id(13) }],
      ["finding", { rung: "marked by", maker: "Pell & Daughters", size: "22 cm" }],
      ["remove", { list: "conditions", id: id(9) }],
    ];
    let file = emptyFile("A thing", "tin and wooden toys");
    for (const typed of commands) {
      const once = done(file, typed);
      expect(once === file, `${typed[0]} changes the file`).toBe(typed[0] === "order");
      const later = readCommand(typed[0], typed[1], { ...STAMP, at: "2026-11-21T10:00:00.000Z" });
      const twice = later.ok ? changeFile(once, later.value) : null;
      expect(twice?.ok && twice.value === once, `${typed[0]} again`).toBe(true);
      file = once;
    }
    expect(new Set(commands.map(([name]) => name))).toEqual(new Set(COMMANDS));
    expect(file.measurements[1]).toMatchObject({ amount: 50, within: 1.44, typed: "" });
    expect(file.finding?.revisions).toEqual([{ entry: "gull-in-ring", revision: entry("x").revision }]);
  });

  it("holds 200 photographs, and refuses one more, but not one of them again", () => {
    const full = fileOf("ceramics", ...Array.from({ length: MOST.photographs }, (_, n) => photograph(n)));
    expect(full.photographs).toHaveLength(200);
    expect(refusedBy(full, photograph(200))).toEqual(["photographs list-full"]);
    expect(refusedBy(full, photograph(7, { shows: "The foot" }))).toEqual([]);
  });

  it.each([
    [
      "a photograph of a mark that is not there",
      photograph(1, { of: "mark", item: id(7) }),
      "item item-unknown",
    ],
    [
      "a point of another family",
      ["observation", { id: id(1), observed: "absent", point: "soft-eyes" }],
      "point item-unknown",
    ],
    [
      "an option the point has not",
      ["observation", { id: id(1), observed: "seen", point: "ceramic-body", option: "tin" }],
      "option item-unknown",
    ],
    ["a match of no mark", pin(7, entry("x")), "mark item-unknown"],
    [
      "a scan of no document",
      ["scan", { id: id(2), document: id(1), sha256: hash(2), type: "image/png" }],
      "document item-unknown",
    ],
    ["a document nobody filed", gift(1, "", "Ada", { documents: id(9) }), "documents item-unknown"],
    [
      "a size without a line",
      ["finding", { rung: "by", maker: "Pell", size: "22 cm" }],
      "size size-without-line",
    ],
    ["a gift to oneself", gift(1, "Ada", "ada "), "to owner-loop"],
  ] as readonly (readonly [string, Typed, string])[])("of %s is refused", (_, typed, fault) =>
    expect(refusedBy(emptyFile("A jug", "ceramics"), typed)).toEqual([fault]),
  );

  it("refuses a circle of owners that no dates tell apart, and takes one that they do", () => {
    const chain = fileOf("ceramics", gift(1, "Ada", "Ben"), gift(2, "Ben", "Cyn"));
    const closing = changeFile(chain, command(gift(3, "Cyn", "Ada")));
    expect(closing).toMatchObject({
      ok: false,
      error: [
        { field: "to", rule: "owner-loop", received: "Ada", params: { owners: "Cyn → Ada → Ben → Cyn" } },
      ],
    });
    const dated = fileOf(
      "ceramics",
      gift(1, "Ada", "Ben", { when: "1921" }),
      gift(2, "Ben", "Cyn", { when: "1930" }),
    );
    expect(refusedBy(dated, gift(3, "Cyn", "Ada", { when: "1944" }))).toEqual([]);
    expect(refusedBy(dated, gift(3, "Cyn", "Ada", { when: "1930" }))).toEqual(["to owner-loop"]);
    expect(refusedBy(chain, gift(3, "Cyn", "Ada", { passage: "lent to" }))).toEqual([]);
  });

  it("finds no circle in 180 steps among 20 owners in time", () => {
    const owners = Array.from({ length: 20 }, (_, i) => `Owner ${String.fromCharCode(65 + i)}`);
    const pairs = owners
      .flatMap((from, i) => owners.slice(i + 1).map((to) => [from, to] as const))
      .slice(0, 180);
    const begun = performance.now();
    const file = fileOf("ceramics", ...pairs.map(([from, to], n) => gift(n, from, to)));
    expect(file.events).toHaveLength(180);
    expect(performance.now() - begun).toBeLessThan(5000);
  });

  it("lets what hung on an item go on without it", () => {
    const file = fileOf(
      "ceramics",
      letter(1),
      mark(2),
      photograph(3, { of: "mark", item: id(2) }),
      gift(4, "", "Ada", { documents: id(1) }),
    );
    const less = [1, 2].reduce(
      (f, n) => done(f, ["remove", { list: n === 1 ? "documents" : "marks", id: id(n) }]),
      file,
    );
    expect(less.photographs[0]).toMatchObject({ of: "whole", item: null });
    expect(less.events[0]?.documents).toEqual([]);
  });

  it("mends a mark without losing its match, and a document without losing its scans", () => {
    const scan: Typed = ["scan", { id: id(2), document: id(1), sha256: hash(2), type: "image/png" }];
    const file = fileOf("ceramics", letter(1), scan, mark(3), pin(3, entry("gull")));
    const mended = done(done(file, letter(1, { title: "Her letter" })), mark(3, { words: "PELL" }));
    expect(mended.documents[0]?.scans).toHaveLength(1);
    expect(mended.marks[0]?.match?.entry).toBe("gull");
  });

  it("keeps the order it is given", () => {
    const file = fileOf("ceramics", gift(1, "", "A"), gift(2, "", "B"), gift(3, "", "C"));
    const order = (f: ObjectFile) => f.events.map(({ to }) => to).join("");
    expect(order(done(file, ["order", { event: id(3), before: id(1) }]))).toBe("CAB");
    expect(order(done(file, ["order", { event: id(1), before: "" }]))).toBe("BCA");
  });
});

describe("two at once", () => {
  const base = fileOf("ceramics", mark(1), gift(2, "", "Ada"));
  const rule = (typed: Typed, newest: ObjectFile) => {
    const changed = changeOn({ madeOn: base, newest }, command(typed));
    return changed.ok ? "done" : changed.error[0]?.rule;
  };

  it("on different items go together", () => {
    expect(rule(mark(1, { words: "PELL" }), done(base, gift(2, "", "Ben")))).toBe("done");
    expect(rule(mark(5), done(base, mark(6)))).toBe("done");
    expect(rule(pin(1, entry("gull")), done(base, mark(1, { words: "PELL" })))).toBe("done");
  });

  it("on the same item are refused, unless they say the same", () => {
    const theirs = done(base, mark(1, { words: "BELL" }));
    expect(rule(mark(1, { words: "PELL" }), theirs)).toBe("changed-meanwhile");
    expect(rule(mark(1, { words: "BELL" }), theirs)).toBe("done");
    expect(rule(["remove", { list: "marks", id: id(1) }], theirs)).toBe("changed-meanwhile");
  });

  it("on the same point of the checklist are on the same item", () => {
    const seen = (n: number, value: string): Typed => [
      "observation",
      { id: id(n), observed: "seen", point: "ceramic-foot", value },
    ];
    expect(rule(seen(8, "wiped"), done(base, seen(9, "turned")))).toBe("changed-meanwhile");
    expect(done(done(base, seen(9, "turned")), seen(8, "wiped")).observations).toMatchObject([
      { id: id(9), value: "wiped" },
    ]);
  });
});
