import { afterAll, beforeAll, expect, it } from "vitest";
import { parseEntryQuery } from "#web/entry-query";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { importFiles, wireScratch } from "../setup/scratch-reference.ts";

const makers = "key,name,place\nharl-and-son,Harl & Son,Ostermoor\nvoss,Dörte Voss,Brack";
const entries = [
  "key,title,kind,maker,words,emblem,technique,material,period,description",
  "anchor,Anchor in a shield,mark,harl-and-son,HARL & SON,anchor,stamped,pewter,1812/1843,On plates and tankards",
  "crown,Crowned hare,mark,voss,D.V.,hare with a crown,impressed,stoneware,1880/..,Below the handle of a jug",
  "label,Woven label with a hare,label,voss,VOSS BRACK,hare,woven,cotton,1904/1926,In the seam of the left ear",
  "rivet,Split rivet,construction detail,,,,applied,brass,,Holds the joint of an arm",
].join("\n");

describeOnBothDatabases("searching entries", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  beforeAll(async () => {
    wired = await wireScratch(database());
    expect(await importFiles(wired, { "makers.csv": makers, "entries.csv": entries })).toMatchObject({
      ok: true,
    });
  });
  afterAll(() => wired.end());

  const find = async (params: Record<string, string>) => {
    const page = await wired.entries.search(parseEntryQuery(params).query);
    return page.entries.map((e) => e.slug);
  };

  it.each([
    [{ words: "hare" }, ["crown", "label"]],
    [{ words: "plate" }, ["anchor"]],
    [{ words: "anker" }, []],
    [{ words: "anchr" }, ["anchor"]],
    [{ words: "voss hare" }, ["crown", "label"]],
    [{ words: "dorte" }, ["crown", "label"]],
    [{ words: "Dörte" }, ["crown", "label"]],
    [{ words: "harl & so" }, ["anchor"]],
    [{ words: "100%_" }, []],
    [{ words: "DV" }, ["crown"]],
    [{ words: "d v" }, ["crown"]],
    [{ words: "D.V" }, ["crown"]],
    [{ words: "vo" }, []],
    [{ kind: "label" }, ["label"]],
    [{ technique: "impressed" }, ["crown"]],
    [{ material: "pewter" }, ["anchor"]],
    [{ maker: "voss" }, ["crown", "label"]],
    [{ period: "1850/1890" }, ["crown"]],
    [{ period: "1910" }, ["crown", "label"]],
    [{ words: "hare", period: "1927" }, ["crown"]],
    [{}, ["anchor", "crown", "rivet", "label"]],
  ])("%j finds %j", async (params, slugs) => {
    expect((await find(params as Record<string, string>)).sort()).toEqual([...slugs].sort());
  });

  it.each([
    ["voss", ["voss"]],
    ["brack voss", ["voss"]],
    ["dorte", ["voss"]],
    ["Ostermor", ["harl-and-son"]],
    ["harl brack", []],
    ["", ["harl-and-son", "voss"]],
  ])("of makers, “%s” finds %j", async (words, slugs) => {
    expect((await wired.makers.list(words)).map((m) => m.slug).sort()).toEqual(slugs);
  });

  it("takes a character that no text may hold for none", async () => {
    expect(parseEntryQuery({ words: "ha\0re" }).query.words).toBe("hare");
  });

  it("counts what each narrowing would leave, under the others", async () => {
    const page = await wired.entries.search(parseEntryQuery({ words: "hare", kind: "label" }).query);
    expect(page.total).toBe(1);
    expect(page.facets.kinds).toEqual([
      { value: "label", count: 1 },
      { value: "mark", count: 1 },
    ]);
    expect(page.facets.makers).toEqual([{ value: "voss", label: "Dörte Voss", count: 1 }]);
  });

  it("names what it can't read and goes on without it", async () => {
    const { query, errors } = parseEntryQuery({ period: "the nineties", page: "x", kind: "hallmark" });
    expect(errors.map((e) => [e.field, e.rule])).toEqual([
      ["period", "edtf"],
      ["page", "whole-number"],
      ["kind", "one-of"],
    ]);
    expect(query).toMatchObject({ period: null, page: 1, kind: null });
  });
});
