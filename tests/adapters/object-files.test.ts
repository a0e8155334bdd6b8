import { randomUUID } from "node:crypto";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { ActingMember } from "#core/members/member";
import type { FileCommand } from "#core/object-files/commands";
import { emptyFile, type ObjectFile } from "#core/object-files/object-file";
import { readCommand } from "#core/object-files/read-command";
import { keepObjectImage } from "#usecases/keep-object-image";
import { maySeeImage } from "#usecases/may-see-image";
import { changeObjectFile } from "#usecases/object-files/change-object-file";
import { findFileToChange, findObjectFile, findSharedFile } from "#usecases/object-files/find-object-file";
import { restoreVersion } from "#usecases/object-files/restore-version";
import { openObjectFile } from "#usecases/open-object-file";
import { openObjectToOthers } from "#usecases/open-object-to-others";
import { takeWorksheet } from "#usecases/take-worksheet";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { drawMark, wireScratch } from "../setup/scratch-reference.ts";

describeOnBothDatabases("object files", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  let [ansa, bram]: ActingMember[] = [];
  const join = async (name: string): Promise<ActingMember> => {
    const email = `${randomUUID()}@host.example`;
    const id = await wired.members.create({ name, email, passwordHash: null, about: "", at: new Date() });
    return {
      kind: "member",
      id: id ?? "",
      name,
      roles: ["contributor"],
      fields: [],
      interests: [],
      suspended: false,
    };
  };
  beforeAll(async () => {
    wired = await wireScratch(database());
    ansa = await join("Ansa Tell");
    bram = await join("Bram Oster");
  }, 120_000);
  afterAll(() => wired.end());

  const owner = () => ansa as ActingMember;
  const other = () => bram as ActingMember;
  const open = async () => {
    const opened = await openObjectFile(wired, owner(), {
      title: "Clockwork boat",
      family: "tin and wooden toys",
      description: "",
    });
    if (!opened.ok) throw new Error(JSON.stringify(opened.error));
    return opened.value;
  };
  const note = (id: string, words: string): FileCommand => ({
    is: "condition",
    item: { id, condition: "worn", extent: "slight", place: "hull", note: words },
  });
  const change = (id: string, by: ActingMember, command: FileCommand, had: number) =>
    changeObjectFile(wired, { id, by, command, had });

  it("are their owner's alone until somebody is invited, and again when that is over", async () => {
    const id = await open();
    expect(await findObjectFile(wired, id, other().id)).toBeNull();
    expect(await findObjectFile(wired, id, null)).toBeNull();
    const invite = (way: "view" | "edit") =>
      openObjectToOthers(wired, id, owner(), { kind: "invite", member: other().id, way });
    await invite("view");
    expect(await findObjectFile(wired, id, other().id)).toMatchObject({ access: "view", isStranger: false });
    expect(await findFileToChange(wired, id, other().id)).toBeNull();
    expect(await change(id, other(), note(randomUUID(), ""), 1)).toMatchObject({
      error: [{ rule: "object-view-only" }],
    });
    await invite("edit");
    await invite("edit");
    expect(await change(id, other(), note(randomUUID(), ""), 1)).toEqual({ ok: true, value: 2 });
    expect(await wired.objectFiles.list(other().id, 9)).toMatchObject([{ id, access: "edit" }]);
    await openObjectToOthers(wired, id, owner(), { kind: "end invitation", member: other().id });
    expect(await findObjectFile(wired, id, other().id)).toBeNull();
    const story = await wired.objectAccess.history(id);
    expect(story.map(({ type }) => type)).toEqual(["invitation ended", "invited to edit", "invited to view"]);
    expect(await openObjectToOthers(wired, id, other(), { kind: "publish" })).toMatchObject({
      error: { rule: "object-file-unknown" },
    });
  });

  it("are read by a link until it is revoked, and by anybody while published", async () => {
    const id = await open();
    const made = await openObjectToOthers(wired, id, owner(), { kind: "share" });
    const key = made.ok ? (made.value ?? "") : "";
    expect(key.length).toBeGreaterThanOrEqual(43);
    expect((await findSharedFile(wired, key))?.id).toBe(id);
    const again = await openObjectToOthers(wired, id, owner(), { kind: "share" });
    expect(await findSharedFile(wired, key)).toBeNull();
    const newer = again.ok ? (again.value ?? "") : "";
    expect((await findSharedFile(wired, newer))?.id).toBe(id);
    await openObjectToOthers(wired, id, owner(), { kind: "revoke" });
    expect(await findSharedFile(wired, newer)).toBeNull();
    await openObjectToOthers(wired, id, owner(), { kind: "publish" });
    expect(await findObjectFile(wired, id, null)).toMatchObject({ access: "view", isStranger: true });
    await openObjectToOthers(wired, id, owner(), { kind: "end publication" });
    expect(await findObjectFile(wired, id, null)).toBeNull();
  });

  it("are listed while published, by the entry that a mark of theirs is matched with", async () => {
    const [id, mark] = [await open(), randomUUID()];
    const item = { id: mark, kind: "mark", technique: null, place: "hull" } as const;
    const words = { words: "", description: "", belongs: "not known" } as const;
    await change(id, owner(), { is: "mark", item: { ...item, ...words } }, 1);
    const revision = { id: randomUUID(), number: 1, contentHash: "0".repeat(64) };
    const found = { lookUp: null, model: null, probability: null, near: [] };
    const match = { entry: "gull-in-ring", title: "Gull in a ring", revision, ...found };
    await change(id, owner(), { is: "match", mark, match }, 2);
    const listed = async (entry: string | null) =>
      (await wired.objectFiles.published(entry, 9)).map((line) => line.id).includes(id);
    expect(await listed(null)).toBe(false);
    await openObjectToOthers(wired, id, owner(), { kind: "publish" });
    expect(await Promise.all([null, "gull-in-ring", "gull-in", "gull"].map(listed))).toEqual([
      ...[true, true, false, false],
    ]);
    await openObjectToOthers(wired, id, owner(), { kind: "end publication" });
    expect(await listed("gull-in-ring")).toBe(false);
  });

  it("keep every version, and add none for what they say already", async () => {
    const [id, item] = [await open(), randomUUID()];
    expect(await change(id, owner(), note(item, "first"), 1)).toEqual({ ok: true, value: 2 });
    expect(await change(id, owner(), note(item, "first"), 1)).toEqual({ ok: true, value: 2 });
    expect(await change(id, owner(), note(item, "second"), 2)).toEqual({ ok: true, value: 3 });
    expect((await wired.objectFiles.versions(id)).map(({ number }) => number)).toEqual([3, 2, 1]);
    expect((await wired.objectFiles.contentOf(id, 2))?.conditions[0]?.note).toBe("first");
    const [newest] = await wired.objectFiles.versions(id);
    expect(newest?.hash).toBe(wired.hash(await wired.objectFiles.contentOf(id, 3)));
  });

  it("bring what two editors changed apart together, and refuse what both changed", async () => {
    const [id, one, two] = [await open(), randomUUID(), randomUUID()];
    await openObjectToOthers(wired, id, owner(), { kind: "invite", member: other().id, way: "edit" });
    const both = await Promise.all([
      change(id, owner(), note(one, "bow"), 1),
      change(id, other(), note(two, "stern"), 1),
    ]);
    expect(both.map((each) => each.ok)).toEqual([true, true]);
    expect((await wired.objectFiles.find(id))?.content.conditions).toHaveLength(2);
    expect(await change(id, other(), note(one, "the bow is bent"), 3)).toMatchObject({ ok: true });
    expect(await change(id, owner(), note(one, "the bow is broken"), 3)).toMatchObject({
      error: [{ rule: "object-changed-meanwhile", received: "4" }],
    });
    expect(await change(id, owner(), note(one, "the bow is broken"), 4)).toEqual({ ok: true, value: 5 });
  });

  it("take a worksheet once, with what each piece says, and let it be removed again", async () => {
    const id = await open();
    const take = async (e: string, by = owner()) => {
      const worksheet = `v=1&${e}`;
      const ids = Array.from({ length: 3 }, randomUUID).join(" ");
      const read = readCommand("pieces", { worksheet, ids }, { by, at: new Date().toISOString() });
      if (!read.ok || read.value.is !== "pieces") throw new Error(JSON.stringify(read));
      return takeWorksheet(wired, { id, by, had: 0, pieces: read.value.items });
    };
    const number = "e=nu*k*1906/..*990*p**Design+470001*Table+of+designs*Renewed+ones+are+older";
    expect(await take(`${number}&e=st*g*1921*650`)).toEqual({
      ok: true,
      value: { version: 2, taken: 2, known: 0 },
    });
    expect(await take(number)).toEqual({ ok: true, value: { version: 2, taken: 0, known: 1 } });
    expect(await take(number, other())).toMatchObject({ error: [{ rule: "object-file-unknown" }] });
    const pieces = (await wired.objectFiles.find(id))?.content.pieces ?? [];
    expect(pieces).toMatchObject([
      {
        ...{ kind: "number", event: "marked", edtf: "1906/..", reliability: 0.99, basis: "published" },
        ...{ reason: "Design 470001", source: "Table of designs", exceptions: "Renewed ones are older" },
      },
      { kind: "story", edtf: "1921", reliability: 0.65 },
    ]);
    const remove = { is: "remove", list: "pieces", id: pieces[1]?.id ?? "" } as const;
    expect(await change(id, owner(), remove, 2)).toEqual({ ok: true, value: 3 });
    expect((await wired.objectFiles.find(id))?.content.pieces).toHaveLength(1);
    expect((await wired.objectFiles.contentOf(id, 2))?.pieces).toHaveLength(2);
  });

  it("bring an older version back as a new one, once, and never over what others wrote unseen", async () => {
    const [id, item] = [await open(), randomUUID()];
    const restore = (number: string, had: number, by = owner()) =>
      restoreVersion(wired, { id, by, number, had });
    await change(id, owner(), note(item, "rubbed"), 1);
    await change(id, owner(), { is: "remove", list: "conditions", id: item }, 2);
    expect(await restore("2", 3)).toEqual({ ok: true, value: 4 });
    expect(await restore("2", 4)).toEqual({ ok: true, value: 4 });
    expect((await wired.objectFiles.find(id))?.content).toEqual(await wired.objectFiles.contentOf(id, 2));
    const [newest, ...others] = await wired.objectFiles.versions(id);
    expect(newest).toMatchObject({
      number: 4,
      command: { is: "restore", number: 2 },
      by: { id: owner().id },
    });
    expect(newest?.hash).toBe(others.find(({ number }) => number === 2)?.hash);
    expect((await wired.objectFiles.contentOf(id, 3))?.conditions).toEqual([]);

    for (const none of ["0", "5", "-1", "1.0", "2 ", "two", "", "9".repeat(30)])
      expect(await restore(none, 4), none).toEqual({
        ok: false,
        error: [{ field: "number", rule: "object-version-unknown", received: none }],
      });
    const by = (rule: string) => ({ ok: false, error: [{ rule }] });
    expect(await restore("1", 4, other())).toMatchObject(by("object-file-unknown"));
    const invite = (way: "view" | "edit") =>
      openObjectToOthers(wired, id, owner(), { kind: "invite", member: other().id, way });
    await invite("view");
    expect(await restore("1", 4, other())).toMatchObject(by("object-view-only"));
    await invite("edit");
    expect(await change(id, other(), note(randomUUID(), "bent"), 4)).toEqual({ ok: true, value: 5 });
    expect(await restore("3", 4)).toMatchObject(by("object-restore-overtaken"));
    expect(await restore("3", 5)).toEqual({ ok: true, value: 6 });
  });

  it("bring a version back once when it is asked for twice at the same time", async () => {
    const [id, item] = [await open(), randomUUID()];
    await change(id, owner(), note(item, "rubbed"), 1);
    const ask = () => restoreVersion(wired, { id, by: owner(), number: "1", had: 2 });
    const both = await Promise.all([ask(), ask()]);
    expect(both).toEqual([3, 3].map((value) => ({ ok: true, value })));
    expect((await wired.objectFiles.find(id))?.version).toBe(3);
  });

  it("of before worksheets were taken are read as having nothing from one", async () => {
    const id = randomUUID();
    const { pieces: _, ...older } = emptyFile("An old jug", "ceramics");
    const first = { command: { is: "open" }, at: new Date(), by: { id: owner().id, name: owner().name } };
    await wired.objectFiles.create(id, { ...first, content: older as ObjectFile });
    expect((await wired.objectFiles.find(id))?.content).toEqual(emptyFile("An old jug", "ceramics"));
    const nothing = { is: "remove", list: "pieces", id: randomUUID() } as const;
    expect(await change(id, owner(), nothing, 1)).toEqual({ ok: true, value: 1 });
  });

  it("refuse to have a version changed or deleted", async () => {
    const id = await open();
    const { prisma } = database();
    const touch = prisma.$executeRaw`UPDATE object_file_versions SET content = '{}' WHERE file_id = ${id}`;
    await expect(touch).rejects.toThrow(/append-only/);
    await expect(prisma.$executeRaw`DELETE FROM object_file_versions WHERE file_id = ${id}`).rejects.toThrow(
      /append-only/,
    );
  });

  describe("images", () => {
    const keep = (id: string, bytes: Uint8Array, member = owner().id) =>
      keepObjectImage(wired, { id, member, bytes });

    it("are stripped, kept once, and seen by those who may see the file", async () => {
      const id = await open();
      const taken = await sharp({ create: { width: 400, height: 300, channels: 3, background: "#456" } })
        .withExif({ IFD0: { Copyright: "Somebody" }, IFD3: { GPSLatitude: "51/1 30/1 0/1" } })
        .jpeg()
        .toBuffer();
      expect((await sharp(taken).metadata()).exif).toBeDefined();
      const first = await keep(id, taken);
      if (!first.ok) throw new Error(JSON.stringify(first.error));
      expect(await keep(id, taken)).toEqual(first);
      const bytes = await wired.blobs.get(first.value.sha256);
      expect((await sharp(bytes ?? new Uint8Array()).metadata()).exif).toBeUndefined();
      const sees = (member: string | null) => maySeeImage(wired, first.value.sha256, member);
      expect([await sees(owner().id), await sees(other().id), await sees(null)]).toEqual([
        true,
        false,
        false,
      ]);
      expect(await wired.lookUps.imageInUse(first.value.sha256)).toBe(true);
    });

    it("keep a clean WebP byte for byte", async () => {
      const [id, drawn] = [await open(), await drawMark(77)];
      const kept = await keep(id, drawn);
      const bytes = kept.ok ? await wired.blobs.get(kept.value.sha256) : null;
      expect(Buffer.from(bytes ?? []).equals(Buffer.from(drawn))).toBe(true);
    });

    it("are refused when they are none, or not the member's to add", async () => {
      const id = await open();
      const pdf = Buffer.from("%PDF-1.7\n1 0 obj\n<<>>\nendobj\n");
      expect(await keep(id, pdf)).toMatchObject({
        error: { rule: "image-type", received: "application/pdf" },
      });
      const script = Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'><script>1</script></svg>");
      expect(await keep(id, script)).toMatchObject({ error: { rule: "image-type" } });
      expect(await keep(id, await drawMark(5), other().id)).toMatchObject({
        error: { rule: "object-file-unknown" },
      });
    });

    it("are 200 at most", async () => {
      const id = await open();
      const { objectImages, clock } = wired;
      for (let n = 0; n < 200; n++) {
        const sha256 = n.toString(16).padStart(64, "0");
        expect(await objectImages.add(id, { sha256, width: 9, height: 9 }, clock.now())).toBe(true);
      }
      expect(await keep(id, await drawMark(9))).toMatchObject({ error: { rule: "object-images-most" } });
    });
  });
});
