import { describe, expect, it } from "vitest";
import type { Piece } from "#core/dating/piece";
import { readAddress } from "#core/dating/read-worksheet";
import { addressOf, type Worksheet } from "#core/dating/worksheet";
import { changeFile } from "#core/object-files/change-file";
import { differenceOfFiles } from "#core/object-files/difference-of-files";
import { estimateOf, evidenceOf } from "#core/object-files/evidence";
import { MOST } from "#core/object-files/limits";
import type { EvidencePiece, ObjectFile } from "#core/object-files/object-file";
import { piecesToTake } from "#core/object-files/pieces-to-take";
import { readCommand } from "#core/object-files/read-command";
import { worksheetOf } from "#core/object-files/worksheet-of-file";
import { faults, fileOf, id, STAMP, THIS_YEAR } from "./story.ts";

const NUMBER: Piece = {
  ...{ kind: "number", event: "marked", edtf: "1906/..", reliability: 0.99, basis: "published" },
  ...{ reason: "Registered design 470001", source: "Table of registered designs" },
  ...{ exceptions: "Renewed designs are older.", group: "A", alternatives: ["1886/.."] },
};
const LABEL: Piece = {
  ...{ kind: "wording", event: "labelled", edtf: "1891/..", reliability: 0.95, basis: "common-practice" },
  ...{ reason: "Made in Marl", source: "", exceptions: "", group: "A", alternatives: [] },
};
const GIFT: Piece = {
  ...{ kind: "story", event: "given", edtf: "1921-03-27", reliability: 0.65, basis: null },
  ...{ reason: "Given at Easter", source: "", exceptions: "", group: null, alternatives: [] },
};
const sheet = (...pieces: readonly Piece[]): Worksheet => ({ title: "A boat", years: null, pieces });

let next = 100;
function items(worksheet: Worksheet): readonly EvidencePiece[] {
  const ids = worksheet.pieces.map(() => id(next++)).join(" ");
  const read = readCommand("pieces", { worksheet: addressOf(worksheet), ids }, STAMP);
  if (!read.ok || read.value.is !== "pieces") throw new Error(JSON.stringify(read));
  return read.value.items;
}

/** What the use case does. */
function take(file: ObjectFile, worksheet: Worksheet): ObjectFile {
  const command = { is: "pieces", items: piecesToTake(evidenceOf(file, []), items(worksheet)) } as const;
  const changed = changeFile(file, command);
  if (!changed.ok) throw new Error(JSON.stringify(changed.error));
  return changed.value;
}

const empty = () => fileOf("tin and wooden toys");

describe("a worksheet taken into a file", () => {
  it("keeps what each piece says, and dates the object with it", () => {
    const file = take(empty(), sheet(NUMBER, LABEL, GIFT));
    expect(file.pieces.map(({ id: _, group: __, ...said }) => said)).toEqual(
      [NUMBER, LABEL, GIFT].map(({ group: _, ...said }) => said),
    );
    const evidence = evidenceOf(file, []);
    expect(evidence.map(({ item, reliability }) => [item.list, reliability])).toEqual([
      ["pieces", 0.99],
      ["pieces", 0.95],
      ["pieces", 0.65],
    ]);
    expect(evidence[0]?.alternatives?.map(({ edtf }) => edtf)).toEqual(["1886/.."]);
    expect(estimateOf(file, [], THIS_YEAR).notAfter?.day).toBe("1921-03-27");
  });

  it("is not doubled when it is taken again, whatever ids its form has", () => {
    const file = take(empty(), sheet(NUMBER, LABEL, GIFT));
    expect(take(file, sheet(NUMBER, LABEL, GIFT))).toBe(file);
    expect(take(file, sheet(GIFT, GIFT))).toBe(file);
  });

  it("is not counted beside what the file says already, in fewer words or in others' case", () => {
    const told = [
      "event",
      { id: id(1), kind: "given", when: "1921-03-27", told: "Given at Easter" },
    ] as const;
    const file = fileOf("tin and wooden toys", told);
    for (const reason of ["", "given at easter", "Given at Easter."])
      expect(take(file, sheet({ ...GIFT, reason }))).toBe(file);
    for (const other of [{ reason: "Given by an aunt" }, { edtf: "1922" }, { event: "sold" }] as const)
      expect(take(file, sheet({ ...GIFT, ...other })).pieces).toHaveLength(1);
  });

  it("puts a piece that is trusted otherwise in the place of the older one", () => {
    const file = take(empty(), sheet(GIFT));
    const surer = take(file, sheet({ ...GIFT, reliability: 0.9 }));
    expect(surer.pieces).toEqual([{ ...file.pieces[0], reliability: 0.9 }]);
  });

  it("counts the groups of two worksheets apart, and joins what one of them had", () => {
    const one = take(empty(), sheet(NUMBER, LABEL));
    const two = take(one, sheet({ ...GIFT, group: "A" }));
    const [a, b, c] = two.pieces.map(({ group }) => group);
    expect(a).toBe(b);
    expect(c).not.toBe(a);
    const three = take(two, sheet(LABEL, { ...LABEL, reason: "With a post code", edtf: "1917/.." }));
    expect(three.pieces.map(({ group }) => group)).toEqual([a, a, c, a]);
  });

  it("holds so many pieces and no more", () => {
    const many = (from: number) =>
      sheet(...Array.from({ length: 30 }, (_, i) => ({ ...GIFT, reason: `Told by number ${from + i}` })));
    const full = take(take(empty(), many(0)), many(30));
    expect(full.pieces).toHaveLength(MOST.pieces);
    expect(changeFile(full, { is: "pieces", items: items(sheet(LABEL)) })).toMatchObject({
      error: [{ field: "pieces", rule: "list-full", received: "61", params: { most: MOST.pieces } }],
    });
    // What is there already finds its place.
    expect(take(full, many(15))).toBe(full);
  });

  it("can be removed piece by piece, and the difference says so", () => {
    const file = take(empty(), sheet(NUMBER, GIFT));
    const gone = changeFile(file, { is: "remove", list: "pieces", id: file.pieces[0]?.id ?? "" });
    if (!gone.ok) throw new Error(JSON.stringify(gone.error));
    expect(gone.value.pieces).toEqual(file.pieces.slice(1));
    const [change] = differenceOfFiles(file, gone.value);
    expect(change).toMatchObject({ part: "pieces", is: "removed" });
    expect(change?.fields).toContainEqual({
      field: "reason",
      before: "Registered design 470001",
      after: "",
    });
  });

  it.each([
    [{ worksheet: "", ids: id(1) }, "worksheet worksheet-empty"],
    [{ worksheet: "v=9&e=mk*k*1900*950", ids: id(1) }, "worksheet worksheet-version"],
    [{ worksheet: "v=1&e=xx*k*1900*950", ids: id(1) }, "evidence worksheet-kind"],
    [{ worksheet: "v=1&e=mk*k*1900-13*950", ids: id(1) }, "evidence worksheet-date"],
    [{ worksheet: "v=1&e=mk*k*1900*950", ids: "" }, "ids item-id"],
  ])("%j is refused: %s", (fields, fault) => expect(faults("pieces", fields)).toEqual([fault]));
});

describe("a file on a worksheet", () => {
  const told = "The whole story of how it came into the house. ".repeat(20);
  const file = take(
    fileOf(
      "tin and wooden toys",
      ["document", { id: id(3), kind: "letter", title: "A letter" }],
      ["event", { id: id(1), kind: "given", to: "Ada", when: "1921", told, documents: id(3) }],
      ["event", { id: id(2), kind: "photographed", to: "Ada", when: "1925", documents: id(3) }],
      [
        "mark",
        { id: id(4), kind: "label", place: "hull", words: "MADE IN GERMANY", belongs: "from the first" },
      ],
    ),
    sheet(NUMBER, LABEL),
  );
  const evidence = evidenceOf(file, []);
  const open = () => {
    const opened = worksheetOf(file, evidence, estimateOf(file, [], THIS_YEAR));
    const read = readAddress(addressOf(opened.worksheet));
    expect(read.errors).toEqual([]);
    return { ...opened, worksheet: read.worksheet };
  };

  it("has every piece of its evidence there, and groups as letters", () => {
    const { worksheet, left } = open();
    expect(left).toBe(0);
    expect(worksheet.pieces).toHaveLength(evidence.length);
    expect(worksheet.pieces.map(({ kind, edtf }) => `${kind} ${edtf}`)).toEqual(
      evidence.map(({ kind, interval }) => `${kind} ${interval.edtf}`),
    );
    const of = (letter: string) =>
      worksheet.pieces.filter(({ group }) => group === letter).map(({ kind }) => kind);
    expect(of("A")).toEqual(["wording", "wording", "wording"]);
    expect(of("B")).toEqual(["story", "photograph"]);
    expect(of("C")).toEqual(["number", "wording"]);
  });

  it("doubles nothing when it is taken back, and loses no word of a text that was cut", () => {
    const { worksheet } = open();
    expect(take(file, worksheet)).toBe(file);
    const more = take(file, { ...worksheet, pieces: [...worksheet.pieces, GIFT] });
    expect(more.pieces).toHaveLength(file.pieces.length + 1);
    const long = take(empty(), sheet({ ...GIFT, reason: told.slice(0, 300).trim() }));
    const cut = `${told.slice(0, 100).trim()}…`;
    expect(take(long, sheet({ ...GIFT, reason: cut }))).toBe(long);
  });

  it("joins a new piece to the group of what the file says", () => {
    const { worksheet } = open();
    const more = take(file, { ...worksheet, pieces: [...worksheet.pieces, { ...GIFT, group: "B" }] });
    expect(more.pieces.at(-1)?.group).toBe(id(3));
  });

  it("fits an address however much there is, the weightiest first", () => {
    const events = Array.from(
      { length: 45 },
      (_, i) =>
        [
          "event",
          { id: id(200 + i), kind: "given", to: `Ada ${i}`, when: String(1900 + i), told: `${i}: ${told}` },
        ] as const,
    );
    const big = fileOf("ceramics", ...events);
    const all = evidenceOf(big, []);
    const { worksheet, left } = worksheetOf(big, all, estimateOf(big, [], THIS_YEAR));
    expect(addressOf(worksheet).length).toBeLessThanOrEqual(12_000);
    expect(worksheet.pieces.length + left).toBe(45);
    expect(worksheet.pieces.length).toBe(30);
    expect(worksheet.pieces.map(({ edtf }) => edtf)).toContain("1900");
    expect(take(big, worksheet)).toBe(big);
  });
});
