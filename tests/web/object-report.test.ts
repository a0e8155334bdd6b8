import { createHash, randomUUID } from "node:crypto";
import { unzipSync } from "fflate";
import sharp from "sharp";
import { extractText, getDocumentProxy } from "unpdf";
import { beforeAll, describe, expect, inject, it } from "vitest";
import { DEMO_MEMBERS, signInAs } from "../setup/sign-in.ts";

const address = inject("appAddress");
const LETTER = `Dear Oda, ${"he sailed it on the pond and brought it home again. ".repeat(500)}Yours, Jonas`;
const WAYS = ["report", "report.pdf", "report.pdf?paper=letter", "report.jsonld", "report.zip"];

describe("the report of an object file", () => {
  let owner = "";
  let other = "";
  let file = "";
  let photograph = Buffer.alloc(0);

  const post = (path: string, fields: Readonly<Record<string, string | Blob>>) => {
    const body = new FormData();
    for (const [name, value] of Object.entries(fields)) body.set(name, value);
    const headers = { cookie: owner, origin: address, accept: "text/html" };
    return fetch(`${address}${path}`, { method: "POST", body, headers, redirect: "manual" });
  };
  const get = (path: string, cookie: string) =>
    fetch(`${address}${path}`, { headers: { cookie }, redirect: "manual" });

  beforeAll(async () => {
    const [first, second] = DEMO_MEMBERS;
    [owner, other] = await Promise.all([
      signInAs(address, first?.id ?? ""),
      signInAs(address, second?.id ?? ""),
    ]);
    const begun = { title: "Clockwork steamer", family: "tin and wooden toys", description: "" };
    const opened = await post("/api/objects", begun);
    file = new URL(opened.headers.get("location") ?? "", address).pathname;
    const noise = { type: "gaussian" as const, mean: 120, sigma: 30 };
    photograph = await sharp({ create: { width: 900, height: 600, channels: 3, background: "#84a", noise } })
      .jpeg()
      .toBuffer();
    const kept = await post(`/api${file}/photograph`, {
      photograph: new Blob([new Uint8Array(photograph)], { type: "image/jpeg" }),
      ...{ id: randomUUID(), of: "whole", shows: "From port", credit: "O. Sarn" },
    });
    expect(kept.headers.get("location")).toContain("said=saved");
    const letter = { id: randomUUID(), kind: "letter", title: "A letter", transcription: LETTER };
    await post(`/api${file}/document`, letter);
    const finding = { rung: "attributed to", maker: "Pell & Daughters", says: "Tin." };
    await post(`/api${file}/finding`, finding);
  }, 120_000);

  it("says on its page and in the PDF on both papers what the finding is, and that it is an opinion", async () => {
    const page = await (await get(`${file}/report`, owner)).text();
    expect(page).toContain("Attributed to Pell &amp; Daughters");
    for (const paper of ["a4", "letter"]) {
      const answer = await get(`${file}/report.pdf?paper=${paper}`, owner);
      expect(answer.headers.get("content-type")).toBe("application/pdf");
      const pdf = await getDocumentProxy(new Uint8Array(await answer.arrayBuffer()));
      const text = (await extractText(pdf, { mergePages: true })).text.replace(/\s+/g, " ");
      expect(text).toContain("Attributed to Pell & Daughters");
      expect(text).toContain("not a valuation and not a guarantee of authenticity");
    }
    expect((await get(`${file}/report.pdf?paper=a5`, owner)).status).toBe(404);
  }, 120_000);

  it("comes as an archive whose every sum is right, with the photograph in it", async () => {
    const answer = await get(`${file}/report.zip`, owner);
    const unpacked = unzipSync(new Uint8Array(await answer.arrayBuffer()));
    const lines = new TextDecoder().decode(unpacked["manifest-sha256.txt"]).trimEnd().split("\n");
    expect(lines).toHaveLength(Object.keys(unpacked).length - 1);
    for (const line of lines) {
      const [sum, path] = line.split("  ");
      const bytes = unpacked[path ?? ""] ?? new Uint8Array();
      expect(createHash("sha256").update(bytes).digest("hex")).toBe(sum);
    }
    expect(lines.filter((line) => line.includes("  photographs/001-"))).toHaveLength(1);
    // The PDF has the beginning of a long letter and says where the whole is: here.
    const pdf = await getDocumentProxy(new Uint8Array(unpacked["report.pdf"] ?? []));
    const text = (await extractText(pdf, { mergePages: true })).text.replace(/\s+/g, "");
    expect(text).toContain("inthezipasdocuments/transcription-001.txt:5,504words");
    expect(text).not.toContain("Yours,Jonas");
    expect(new TextDecoder().decode(unpacked["documents/transcription-001.txt"])).toBe(`${LETTER}\n`);
  }, 60_000);

  it.each(WAYS)(
    "is not there at %s for who may not see the file",
    async (way) => {
      expect((await get(`${file}/${way}`, other)).status).toBe(404);
      if (way !== "report") expect((await get(`${file}/${way}`, "")).status).toBe(404);
    },
    60_000,
  );

  it("is there by the file's link for who is not signed in, until that is revoked", async () => {
    const body = new FormData();
    const headers = { cookie: owner, origin: address, accept: "application/json" };
    const answer = await fetch(`${address}/api${file}/share`, { method: "POST", body, headers });
    const shared = ((await answer.json()) as { address: string }).address;
    for (const way of WAYS) expect([way, (await get(`${shared}/${way}`, "")).status]).toEqual([way, 200]);
    const linked = (await (await get(`${shared}/report.jsonld`, "")).json()) as { type: string; id: string };
    expect(linked).toMatchObject({ type: "HumanMadeObject", id: `${address}${shared}` });
    await post(`/api${file}/revoke`, {});
    for (const way of WAYS) expect([way, (await get(`${shared}/${way}`, "")).status]).toEqual([way, 404]);
  }, 120_000);
});
