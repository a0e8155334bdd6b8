import { expect, inject, it } from "vitest";
import { PACES } from "#core/questions/pace";
import {
  askQuestion,
  lookUpUnknown,
  newClient,
  PROPOSAL,
  PUBLICATION,
  refusalOf,
} from "../setup/ask-question.ts";

const address = inject("appAddress");
let clients = 0;
/** An address of its own for each, from the block kept for examples (RFC 5737). */
const somebody = () => newClient(address, `203.0.113.${++clients}`);

it("lets only the owner of a look-up publish it, once, and gives the key once", async () => {
  const [asker, stranger] = [somebody(), somebody()];
  const { id } = await lookUpUnknown(asker);
  const path = `/api/look-ups/${id}/publish`;
  expect((await stranger.get(`/look-ups/${id}/publish`)).status).toBe(404);
  expect(await refusalOf(await stranger.send(path, PUBLICATION))).toBe("404 look-up look-up-unknown");
  expect(await refusalOf(await asker.send(path, { ...PUBLICATION, confirmed: "" }))).toBe(
    "422 confirmed confirmed",
  );
  const first = (await (await asker.send(path, PUBLICATION)).json()) as { id: string; key: string };
  expect(first.key).toMatch(/^[\w-]{43}$/);
  expect(await (await asker.send(path, PUBLICATION)).json()).toEqual({ id: first.id, key: null });
});

it("keeps the key out of reach of scripts, and shows the private address only to who holds it", async () => {
  const asker = somebody();
  const { id: lookUp } = await lookUpUnknown(asker);
  const published = await asker.send(`/api/look-ups/${lookUp}/publish`, PUBLICATION);
  const { id, key } = (await published.json()) as { id: string; key: string };
  const cookie = published.headers.getSetCookie().find((each) => each.startsWith("countermark-asker="));
  expect(cookie).toMatch(/HttpOnly/i);
  expect(cookie).toMatch(/SameSite=lax/i);
  const read = async (client: ReturnType<typeof somebody>, path: string) => (await client.get(path)).text();
  expect(await read(asker, `/questions/${id}?said=published`)).toContain(key);
  expect(await read(asker, `/questions/${id}`)).not.toContain(key);
  expect(await read(somebody(), `/questions/${id}?said=published`)).not.toContain(key);
});

it("refuses whoever holds no key or another's, and knows the asker again by the private address", async () => {
  const [asker, other, elsewhere] = [somebody(), somebody(), somebody()];
  const { id, key } = await askQuestion(asker);
  await askQuestion(other);
  expect((await other.send(`/api/questions/${id}/propose`, PROPOSAL)).status).toBe(200);
  const decline = { proposal: "1", reason: "Ours has no bridle at all." };
  for (const [act, fields] of [
    ["accept", { proposal: "1" }],
    ["take-back", { proposal: "1" }],
    ["decline", decline],
    ["withdraw", {}],
  ] as const) {
    const answer = await other.send(`/api/questions/${id}/${act}`, fields);
    expect(await refusalOf(answer), act).toBe("403 question asker-only");
  }
  const entry = {
    title: "Horse",
    kind: "mark",
    description: "A horse.",
    licence: "x",
    credit: "x",
    understood: "",
  };
  expect(await refusalOf(await other.send(`/api/questions/${id}/enter`, entry))).toBe(
    "403 question asker-only",
  );
  expect((await other.get(`/questions/${id}/entry`)).status).toBe(404);

  const wrong = await elsewhere.get(`/questions/${id}/asker/${"x".repeat(43)}`);
  expect(wrong.headers.get("location")).toMatch(/\?form=/);
  expect(wrong.headers.getSetCookie()).toEqual([]);
  expect((await elsewhere.send(`/api/questions/${id}/accept`, { proposal: "1" })).status).toBe(403);
  const right = await elsewhere.get(`/questions/${id}/asker/${key}`);
  expect(right.headers.get("location")).toBe(`/questions/${id}?said=known`);
  expect((await elsewhere.send(`/api/questions/${id}/accept`, { proposal: "1" })).status).toBe(200);
});

it("names every field that is wrong, its rule and its value", async () => {
  const { id } = await askQuestion(somebody());
  const answer = await somebody().send(`/api/questions/${id}/propose`, {
    entry: "no entry",
    reasons: "It is.",
  });
  expect(answer.status).toBe(422);
  const { errors } = (await answer.json()) as { errors: readonly object[] };
  expect(errors).toMatchObject([
    { field: "entry", rule: "entry-address", received: "no entry" },
    { field: "reasons", rule: "text-shortest", received: "It is." },
    { field: "basis", rule: "one-of", received: "" },
    { field: "name", rule: "required", received: "" },
  ]);
  const unknown = { ...PROPOSAL, entry: "there-is-no-such-entry" };
  expect(await refusalOf(await somebody().send(`/api/questions/${id}/propose`, unknown))).toBe(
    "422 entry entry-not-here",
  );
  expect(await refusalOf(await somebody().send("/api/questions/0/propose", PROPOSAL))).toBe(
    "404 question question-unknown",
  );
  const large = { ...PROPOSAL, reasons: "x".repeat(200_000) };
  expect((await somebody().send(`/api/questions/${id}/propose`, large)).status).toBe(413);
});

it("shows what strangers wrote as they wrote it: no markup, and no address becomes a link", async () => {
  const asker = somebody();
  const { id } = await askQuestion(asker);
  const reasons = '<img src=x onerror="alert(1)"> see https://elsewhere.example/page for more';
  await somebody().send(`/api/questions/${id}/propose`, { ...PROPOSAL, reasons });
  const page = await (await asker.get(`/questions/${id}`)).text();
  expect(page).toContain("&lt;img src=x");
  expect(page).not.toContain("<img src=x");
  expect(page).not.toMatch(/href="https:\/\/elsewhere/);
});

it("refuses what another site's page sends", async () => {
  const { id } = await askQuestion(somebody());
  for (const path of [
    `/api/questions/${id}/propose`,
    `/api/questions/${id}/enter`,
    "/api/look-ups/0/publish",
  ]) {
    const answer = await somebody().send(path, PROPOSAL, { "sec-fetch-site": "cross-site" });
    expect(await refusalOf(answer), path).toBe("403 origin same-origin");
  }
});

it("lets one client propose only so often, says how long to wait, and goes on for the others", async () => {
  const { id } = await askQuestion(somebody());
  const eager = somebody();
  const propose = (n: number) =>
    eager.send(`/api/questions/${id}/propose`, { ...PROPOSAL, mark: `Mark number ${n}` });
  for (let n = 0; n < PACES.propose.each; n++) expect((await propose(n)).status, String(n)).toBe(200);
  const refused = await propose(PACES.propose.each);
  expect(refused.status).toBe(429);
  expect(Number(refused.headers.get("retry-after"))).toBeGreaterThan(3000);
  const { error } = (await refused.json()) as { error: object };
  expect(error).toMatchObject({
    field: "request",
    rule: "too-often",
    received: String(PACES.propose.each),
    params: { most: PACES.propose.each },
  });
  expect((await somebody().send(`/api/questions/${id}/propose`, PROPOSAL)).status).toBe(200);
});

it("no longer shows a question that was withdrawn, nor its words and photographs", async () => {
  const asker = somebody();
  const { id } = await askQuestion(asker);
  expect(await (await asker.get("/questions")).text()).toContain(id);
  expect((await asker.send(`/api/questions/${id}/withdraw`, {})).status).toBe(200);
  expect((await asker.send(`/api/questions/${id}/withdraw`, {})).status).toBe(200);
  const page = await (await asker.get(`/questions/${id}`)).text();
  expect(page).not.toContain(PUBLICATION.about);
  expect(page).not.toContain("/images/");
  expect(await (await asker.get("/questions")).text()).not.toContain(id);
  expect((await asker.get(`/questions/${id}/propose`)).status).toBe(404);
});

it("lists no look-up that was not published", async () => {
  const { id, query } = await lookUpUnknown(somebody());
  const lists = ["/questions", "/entries", "/"];
  const pages = await Promise.all(lists.map(async (path) => (await somebody().get(path)).text()));
  expect(pages.join()).not.toContain(id);
  // Another look-up of the same photograph may be published; this one's answer must lead nowhere.
  expect(query.sha256).toMatch(/^[0-9a-f]{64}$/);
  expect(await (await somebody().get(`/look-ups/${id}`)).text()).not.toContain("/questions/");
});
