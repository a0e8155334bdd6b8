import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, inject, it } from "vitest";
import type { Actor, Role } from "#core/members/member";
import { ACTIONS, may } from "#core/permissions";
import type { EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { historyOf } from "#core/review/evolve";
import { weighVotes } from "#core/review/weigh-votes";
import { eventOf } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import messages from "../../messages/en.json" with { type: "json" };
import { contributeEntry } from "../setup/contribute-entry.ts";
import { DEMO_MEMBERS, signInAs } from "../setup/sign-in.ts";
import { type Write, writesOn } from "../setup/writes.ts";

const address = inject("appAddress");
const api = fileURLToPath(new URL("../../app/api", import.meta.url));

/** Who tries every write; the entry that is tried on is of the field of ceramics. */
const WHO = {
  reader: null,
  contributor: "Jory Amblett",
  "reviewer in the field": "Senna Durrick",
  "reviewer of another field": "Corvin Athelby",
  moderator: "Anselm Grewitt",
  administrator: "Wenda Thorsley",
} as const;
type Who = keyof typeof WHO;
const EVERYBODY = Object.keys(WHO) as readonly Who[];
/** Pages that only some may see: what they say besides to whom they are shown. */
const PAGES = [
  { needs: "see the log of moderation", path: "/moderation", says: messages.moderation.log },
  { needs: "see agreement", path: "/moderation", says: messages.moderation.agreement },
] as const;

const WRITES = writesOn({ slug: "{slug}", revision: "{revision}", draft: "{draft}" });
const CASES = EVERYBODY.length * (WRITES.length + PAGES.length);
let tried = { slug: "", revision: "" };
let walked = 0;

beforeAll(async () => {
  const path = await contributeEntry(address, "Bars in a square, for every role");
  const slug = path.replace("/entries/", "");
  tried = { slug, revision: (await historyAt(slug)).revisions[0]?.id ?? "" };
});

describe.each(EVERYBODY)("%s", (who) => {
  it("does over HTTP what the table allows, and is refused everything else", async () => {
    const cookie = WHO[who] === null ? "" : await signInAs(address, WHO[who]);
    const began = await send({ needs: "write a draft", route: "drafts", answer: "" }, cookie);
    const draft = String((await began.json()).id ?? "none");
    const expected = new Map<string, string>();
    const found = new Map<string, string>();
    for (const write of writesOn({ ...tried, draft })) {
      const name = `${write.path} ${write.fields?.act ?? ""} (${write.needs})`;
      expected.set(name, answerTo(write, who));
      found.set(name, await whatIsSaid(await send(write, cookie)));
      walked++;
    }
    expect(Object.fromEntries(found)).toEqual(Object.fromEntries(expected));
  });

  it.each(PAGES)("$needs", async ({ needs, path, says }) => {
    const cookie = WHO[who] === null ? "" : await signInAs(address, WHO[who]);
    const answer = await fetch(address + path, { headers: { cookie } });
    const allowed = may(actorOf(who), needs);
    expect((await answer.text()).includes(says)).toBe(allowed);
    // Who is not signed in is led to where they can be.
    expect(answer.status).toBe(allowed || who === "reader" ? 200 : 403);
    walked++;
  });
});

it("counts the vote of the reviewer in the field alone", async () => {
  const history = await historyAt(tried.slug);
  const [review] = history.reviews;
  if (!review) throw new Error("The entry was put forward.");
  const votes = weighVotes(history, review).map(({ vote, notCounted }) => [vote.voter.name, notCounted]);
  expect(Object.fromEntries(votes)).toEqual({
    "Senna Durrick": null,
    "Corvin Athelby": "not a reviewer in the field",
  });
});

it(`has a case for each of the ${ACTIONS.length} actions and each POST route, and walked all ${CASES}`, () => {
  const needed = new Set<string>([...WRITES, ...PAGES].map(({ needs }) => needs));
  expect(ACTIONS.filter((action) => !needed.has(action))).toEqual([]);
  expect([...new Set(WRITES.map(({ route }) => route))].sort()).toEqual(postRoutes());
  expect(walked).toBe(CASES);
  const allowed = EVERYBODY.flatMap((who) =>
    [...WRITES, ...PAGES].filter(({ needs }) => needs === "anybody" || isAllowed(who, needs)),
  ).length;
  console.log(
    `${EVERYBODY.length} roles, ${WRITES.length} writes, ${PAGES.length} pages: ${walked} cases, ${allowed} allowed.`,
  );
});

/** Folders in app/api whose route answers POST. */
const postRoutes = (): readonly string[] =>
  readdirSync(api, { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith("route.ts"))
    .filter((file) => /export (const POST|async function POST)/.test(readFileSync(join(api, file), "utf8")))
    .map((file) => file.replace(/\/route\.ts$/, ""))
    .sort();

const isAllowed = (who: Who, needs: Write["needs"]): boolean =>
  needs !== "operator" && needs !== "anybody" && may(actorOf(who), needs);

function answerTo({ needs, answer }: Write, who: Who): string {
  if (needs === "operator") return "404";
  if (needs === "anybody" || isAllowed(who, needs)) return answer;
  return who === "reader" ? "401 sign-in-first" : "403 role-needed";
}

function actorOf(who: Who): Actor {
  const member = DEMO_MEMBERS.find(({ name }) => name === WHO[who]);
  if (!member) return { kind: "reader" };
  const { id, name, fields, roles } = member;
  const all: readonly Role[] = ["contributor", ...roles];
  return { kind: "member", id, name, roles: all, fields, interests: [], suspended: false };
}

function send({ route, path, fields }: Write, cookie: string): Promise<Response> {
  const body = new FormData();
  for (const [name, value] of Object.entries(fields ?? {})) body.set(name, value);
  // Without a field a form has no parts, and counts as none.
  if (!fields) body.set("nothing", "");
  return fetch(`${address}/api/${path ?? route}`, {
    method: "POST",
    body,
    headers: { accept: "application/json", cookie },
    redirect: "manual",
  });
}

/** How a write was answered: refused by role with its status, else by which rule, or not at all. */
async function whatIsSaid(answer: Response): Promise<string> {
  const { status } = answer;
  if (status === 303) return "led on";
  const text = await answer.text();
  if (text === "") return String(status);
  const { error } = JSON.parse(text) as { readonly error?: { readonly rule: string } };
  if (!error) return answer.ok ? "done" : String(status);
  return status === 401 || status === 403 ? `${status} ${error.rule}` : error.rule;
}

async function historyAt(slug: string): Promise<EntryHistory> {
  const links: readonly Link[] = await (await fetch(`${address}/entries/${slug}/trail.json`)).json();
  return historyOf(links.map((link) => eventOf<EntryEvent>(link)));
}
