import { randomUUID } from "node:crypto";
import { beforeAll, describe, expect, inject, it } from "vitest";
import messages from "../../messages/en.json" with { type: "json" };
import { photographOfBoat } from "../setup/boat-photograph.ts";
import { DEMO_MEMBERS, signInAs } from "../setup/sign-in.ts";

const address = inject("appAddress");
const words = messages.objectPages;
const [owner] = DEMO_MEMBERS;
let cookie = "";
beforeAll(async () => {
  cookie = await signInAs(address, owner?.id ?? "");
});

type Fields = Readonly<Record<string, string | Blob>>;

/** Sends a form as a browser without scripts does, and reads the page that it is led to. */
async function send(path: string, fields: Fields, who = cookie) {
  const body = new FormData();
  for (const [name, value] of Object.entries(fields)) body.set(name, value);
  const answer = await fetch(`${address}/api/${path}`, {
    method: "POST",
    body,
    headers: { cookie: who },
    redirect: "manual",
  });
  const to = answer.headers.get("location") ?? "";
  return { status: answer.status, to, page: to === "" ? "" : await page(to) };
}

/** A page as text, with the signs that HTML writes otherwise as they are. */
async function page(path: string, who = cookie): Promise<string> {
  const html = await (await fetch(new URL(path, address), { headers: { cookie: who } })).text();
  // What Next sends besides for its own use says everything twice.
  return html
    .replace(/<script[^>]*>[\s\S]*?<\/script>/g, "")
    .replaceAll("&#x27;", "'")
    .replaceAll("&quot;", '"');
}

async function open(title: string): Promise<string> {
  const { to } = await send("objects", { title, family: "tin and wooden toys" });
  return new URL(to, address).pathname;
}

const api = (file: string, command: string) => `${file.slice(1)}/${command}`;
const saved = /said=saved/;

describe("who may do what to an object file", () => {
  const note = () => ({ id: randomUUID(), version: "1", condition: "worn", extent: "slight" });
  const [, second, third] = DEMO_MEMBERS;
  /** Status of what a program sends. */
  async function status(path: string, fields: Fields, who: string): Promise<number> {
    const body = new FormData();
    for (const [name, value] of Object.entries(fields)) body.set(name, value);
    const headers = { accept: "application/json", cookie: who };
    return (await fetch(`${address}/api/${path}`, { method: "POST", body, headers })).status;
  }

  it("its owner everything, an editor changes, a viewer reads, to anybody else it is as if it were not", async () => {
    const file = await open("Who may");
    const people = {
      owner: cookie,
      invited: await signInAs(address, second?.id ?? ""),
      stranger: await signInAs(address, third?.id ?? ""),
      reader: "",
    };
    const tried = async () => {
      const found: Record<string, readonly number[]> = {};
      for (const [name, who] of Object.entries(people)) {
        const seen = await fetch(address + file, { headers: { cookie: who }, redirect: "manual" });
        const worksheet = { worksheet: "v=1&e=st*g*1921*650", ids: randomUUID() };
        found[name] = [
          seen.status,
          await status(api(file, "condition"), note(), who),
          await status(api(file, "pieces"), worksheet, who),
          await status("objects/take", { ...worksheet, into: file.replace("/objects/", "") }, who),
          await status(api(file, "revoke"), {}, who),
        ];
      }
      return found;
    };
    const none = { stranger: [404, 404, 404, 404, 404], reader: [307, 401, 401, 401, 401] };
    const all = [200, 200, 200, 200, 200];
    expect(await tried()).toEqual({ owner: all, invited: [404, 404, 404, 404, 404], ...none });
    const invite = (way: string) => send(api(file, "invite"), { invited: second?.id ?? "", way });
    await invite("view");
    expect(await tried()).toEqual({ owner: all, invited: [200, 404, 404, 403, 404], ...none });
    await invite("edit");
    expect(await tried()).toEqual({ owner: all, invited: [200, 200, 200, 200, 404], ...none });
  });
});

describe("a long transcription", () => {
  const form = (file: string, transcription: string) => ({
    ...{ id: randomUUID(), version: "1", kind: "letter", title: "A long letter", transcription },
    page: `${file}/provenance`,
  });

  it("of 60,000 signs passes, whatever the signs", async () => {
    const file = await open("A letter of many words");
    const { to } = await send(api(file, "document"), form(file, "жалоба ".repeat(8571).slice(0, 60_000)));
    expect(to).toMatch(saved);
    expect(await page(`${file}/provenance`)).toContain("жалоба жалоба");
  });

  it.each([
    ["of more signs than that", "long word ".repeat(6001), "at most 60000 signs fit"],
    ["of more than 512 kB", "long word ".repeat(60_000), "512 kB at most"],
  ])("%s is refused in words, and is still in its field", async (_, text, said) => {
    const file = await open("A letter of too many words");
    const answer = await send(api(file, "document"), form(file, text));
    expect(answer.to).toMatch(/\/provenance\?form=/);
    expect(answer.page.replaceAll(",", "")).toContain(said);
    expect(answer.page).toContain(text.trim().slice(-1000));
    expect(answer.page).toContain("A long letter");
  });
});

it("an observation outside the checklist is added with a photograph, changed and removed", async () => {
  const file = await open("Something else seen");
  const id = randomUUID();
  const photograph = new File([new Uint8Array(await photographOfBoat(3))], "a.jpg", { type: "image/jpeg" });
  const form = { id, version: "1", what: "A number in pencil", page: `${file}/examine` };
  const refused = await send(api(file, "observation"), { ...form, observed: "seen", note: "By lamp light" });
  expect(refused.page).toContain("By lamp light");
  expect(refused.page).toMatch(/<details[^>]*open=""[^>]*><summary>Something else seen/);
  const added = await send(api(file, "observation"), {
    ...{ ...form, observed: "seen", value: "No. 14", note: "By lamp light", photograph },
    photographId: randomUUID(),
  });
  expect(added.to).toMatch(saved);
  const examined = await page(`${file}/examine`);
  expect(examined).toContain("Seen. No. 14. By lamp light");
  expect(examined).toContain('alt="A number in pencil"');
  await send(api(file, "observation"), { ...form, version: "3", observed: "absent" });
  expect(await page(`${file}/examine`)).toContain(words.examine.observed.absent);
  await send(api(file, "remove"), { version: "4", list: "observations", id, page: `${file}/examine` });
  expect(await page(`${file}/examine`)).not.toContain("A number in pencil");
});

it("an anomaly that somebody wrote is changed, and a refused weight keeps its reason", async () => {
  const file = await open("An anomaly");
  const [id, first, second] = [randomUUID(), randomUUID(), randomUUID()];
  const form = { id, version: "1", page: `${file}/finding`, says: "It smells of paint" };
  const one = { "explanation-1-id": first, "explanation-1-says": "Newly painted" };
  expect((await send(api(file, "anomaly"), { ...form, ...one })).to).toMatch(saved);
  const shown = await page(`${file}/finding`);
  expect(shown).toContain(words.finding.changeAnomaly);
  expect(shown).toContain(`value="${first}"`);
  const two = { "explanation-2-id": second, "explanation-2-says": "Kept in a shed" };
  await send(api(file, "anomaly"), {
    ...form,
    version: "2",
    says: "It smells of paint, faintly",
    ...one,
    ...two,
  });
  const changed = await page(`${file}/finding`);
  expect(changed).toContain("It smells of paint, faintly");
  expect(changed).toContain("Kept in a shed");

  const stance = {
    id: randomUUID(),
    version: "3",
    page: `${file}/finding`,
    anomaly: id,
    explanation: second,
  };
  const refused = await send(api(file, "stance"), {
    ...stance,
    weight: "sure",
    reason: "The lid is stained",
  });
  expect(refused.page).toContain('value="The lid is stained"');
  expect((await send(api(file, "stance"), { ...stance, weight: "likely", reason: "The lid" })).to).toMatch(
    saved,
  );

  const history = await page(`${file}/history?version=3`);
  expect(history).toContain(words.history.fields["explanations-says"]);
  expect(history).not.toContain("explanations.1.says");
  expect(await page(`${file}/history`)).toContain("Kept in a shed");
});

describe("a mark's entry chosen by hand", () => {
  it("is found by words, pinned to one revision, and refused where there is no such revision", async () => {
    const file = await open("A mark by hand");
    const mark = randomUUID();
    await send(api(file, "mark"), { id: mark, version: "1", kind: "mark", place: "hull" });
    const found = await page(`${file}/marks?mark=${mark}&words=marl`);
    const entry = /name="entry" value="([\w-]+)"/.exec(found)?.[1] ?? "";
    expect(found).toContain(words.match.accept);
    expect(entry).not.toBe("");
    const form = { version: "2", mark, entry, lookUp: "", page: `${file}/marks` };
    const none = await send(api(file, "match"), { ...form, revision: "99" });
    expect(none.to).toMatch(/form=/);
    expect((await send(api(file, "match"), { ...form, revision: "1" })).to).toMatch(saved);
    const pinned = await page(`${file}/marks`);
    expect(pinned).toContain(words.match.byHand);
    expect(pinned).toContain(`/entries/${entry}/revisions/1`);
    const nothing = await page(`${file}/marks?mark=${mark}&words=qqqqqqqqq`);
    expect(nothing).toContain("qqqqqqqqq");
  });
});

it("whoever has the link sees the examination, the condition, what does not fit, and cautions", async () => {
  const file = await open("Shared in whole");
  const send1 = (command: string, fields: Fields) =>
    send(api(file, command), { version: "1", id: randomUUID(), ...fields });
  const anomaly = randomUUID();
  await send1("observation", { what: "A smell", observed: "seen", value: "Paint" });
  await send1("condition", { condition: "worn", extent: "heavy", place: "the bow", note: "Down to the tin" });
  await send1("anomaly", {
    ...{ id: anomaly, says: "It is too light", "explanation-1-id": randomUUID() },
    ...{ "explanation-1-says": "The spring is gone", "explanation-1-for": "It does not tick" },
  });
  await send1("pieces", { worksheet: "v=1&e=st*g*1921*650***Told+at+the+table", ids: randomUUID() });
  await send1("finding", { rung: "marked by", maker: "Pell & Daughters" });
  const { page: sharing } = await send(api(file, "share"), {});
  const link = /\/shared\/[\w-]+/.exec(sharing)?.[0] ?? "";
  const shared = await page(link, "");
  for (const each of [
    "A smell",
    "Down to the tin",
    "The spring is gone",
    "It does not tick",
    "Told at the table",
  ])
    expect(shared).toContain(each);
  expect(shared).toContain(messages.objects.caution["marked-without-match"]);
  expect(await page(file)).toContain(messages.objects.caution["marked-without-match"]);
  expect(shared).not.toContain('action="/api/objects');
});

it("what was removed is brought back from the history, and a version that is none is refused in words", async () => {
  const file = await open("Removed too soon");
  const id = randomUUID();
  const note = { id, version: "1", condition: "worn", extent: "slight", note: "Rubbed at the bow" };
  await send(api(file, "condition"), { ...note, page: `${file}/condition` });
  const form = { version: "2", list: "conditions", id, page: `${file}/condition`, done: `${file}/condition` };
  const removed = await send(api(file, "remove"), form);
  expect(removed.to).toMatch(/\/condition\?said=removed/);
  expect(removed.page).toMatch(new RegExp(`role="status">Removed\\.[^<]*<a href="${file}/history#versions"`));
  expect(removed.page).not.toContain("Rubbed at the bow");

  const history = await page(`${file}/history`);
  const offered = [...history.matchAll(/name="number" value="(\d+)"/g)].map(([, number]) => number);
  // The first says what the newest does.
  expect(offered).toEqual(["2"]);
  const back = await send(api(file, "restore"), { number: "2", version: "3" });
  expect(back.to).toBe(`${file}/history?said=restored`);
  expect(back.page).toContain(words.restored);
  expect(back.page).toContain("Version 2 brought back");
  expect(await page(`${file}/condition`)).toContain("Rubbed at the bow");

  const refused = await send(api(file, "restore"), { number: "17", version: "4" });
  expect(refused.page).toContain("no version of that number to bring back. Received “17”");
  const second = await signInAs(address, DEMO_MEMBERS[1]?.id ?? "");
  expect((await send(api(file, "restore"), { number: "2", version: "4" }, second)).status).toBe(404);
});
