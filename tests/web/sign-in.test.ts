import { expect, inject, it } from "vitest";
import { newClient, refusalOf } from "../setup/ask-question.ts";
import { DEMO_MEMBERS, signInAs } from "../setup/sign-in.ts";

const address = inject("appAddress");
let clients = 0;
/** An address of its own for each, from a block kept for examples (RFC 5737). */
const somebody = () => newClient(address, `198.51.100.${++clients}`);
const PASSWORD = "a stoneware jug, worn";
/** So that a host that is tested twice has not met them. */
const run = Date.now().toString(36);
let names = 0;

async function member() {
  const client = somebody();
  const email = `m${++names}-${run}@example.org`;
  const answer = await client.send("/api/join", { name: "Ida Corran", email, password: PASSWORD });
  expect(answer.status).toBe(200);
  return { client, email, id: ((await answer.json()) as { id: string }).id };
}
const account = async (client: ReturnType<typeof somebody>) => (await client.get("/account")).status;

it("joins, is signed in, signs out and in again; the cookie is out of reach of scripts", async () => {
  const { client, email } = await member();
  expect(await account(client)).toBe(200);
  expect((await client.send("/api/sign-out", {})).status).toBe(200);
  expect(await account(client)).toBe(307);
  const answer = await client.send("/api/sign-in/password", { email, password: PASSWORD, next: "/entries" });
  expect(await answer.json()).toEqual({ next: "/entries" });
  const cookie = answer.headers.getSetCookie().find((each) => each.startsWith("next-auth.session-token="));
  expect(cookie).toMatch(/; HttpOnly/i);
  expect(cookie).toMatch(/; SameSite=Lax/i);
  expect(await account(client)).toBe(200);
});

it("refuses a wrong password and an unknown address in the same words, keeps the address and never a password", async () => {
  const { email } = await member();
  for (const typed of [email, `nobody-${run}@example.org`]) {
    const refused = await somebody().send("/api/sign-in/password", {
      email: typed,
      password: "not this one",
    });
    expect(await refused.json()).toMatchObject({
      error: { field: "email", rule: "sign-in-wrong", received: typed },
    });
  }
  const client = somebody();
  const plain = { accept: "text/html" };
  const led = await client.send("/api/sign-in/password", { email, password: "not this one" }, plain);
  expect(led.status).toBe(303);
  const page = await (await client.get(led.headers.get("location") ?? "")).text();
  expect(page).toContain(`value="${email}"`);
  expect(page).toContain("no account has the two together");
  expect(page).not.toContain("not this one");
});

it("says after ten failures when to try again, also to the right password, and goes on for the others", async () => {
  const { email } = await member();
  const others = await member();
  for (let i = 0; i < 10; i++) {
    const wrong = await somebody().send("/api/sign-in/password", { email, password: "not this one" });
    expect(await refusalOf(wrong)).toBe("422 email sign-in-wrong");
  }
  const refused = await somebody().send("/api/sign-in/password", { email, password: PASSWORD });
  expect(refused.status).toBe(429);
  const wait = Number(refused.headers.get("retry-after"));
  expect(wait).toBeGreaterThan(800);
  expect(wait).toBeLessThanOrEqual(900);
  const right = await somebody().send("/api/sign-in/password", { email: others.email, password: PASSWORD });
  expect(right.status).toBe(200);
});

it("lets a session be revoked from another browser, and all others at once", async () => {
  const { client: here, email } = await member();
  const [there, elsewhere] = [somebody(), somebody()];
  for (const client of [there, elsewhere])
    expect((await client.send("/api/sign-in/password", { email, password: PASSWORD })).status).toBe(200);
  expect(await account(there)).toBe(200);
  expect((await here.send("/api/account/sign-out-elsewhere", {})).status).toBe(200);
  expect([await account(here), await account(there), await account(elsewhere)]).toEqual([200, 307, 307]);
  const signedOut = await there.send("/api/account/profile", { name: "Somebody" });
  expect(await refusalOf(signedOut)).toBe("401 member sign-in-first");
});

it("takes no cookie that was not sealed here, and none that was changed", async () => {
  const cookie = await signInAs(address, "Jory Amblett");
  const statusWith = async (value: string) =>
    (await fetch(`${address}/account`, { headers: { cookie: value }, redirect: "manual" })).status;
  expect(await statusWith(cookie)).toBe(200);
  const middle = Math.floor(cookie.length / 2);
  const changed = cookie.slice(0, middle) + (cookie[middle] === "A" ? "B" : "A") + cookie.slice(middle + 1);
  expect(await statusWith(changed)).toBe(307);
  expect(await statusWith("next-auth.session-token=x")).toBe(307);
});

it("signs a suspended member out and in no more, until the suspension is over", async () => {
  const { client, email, id } = await member();
  const cookie = await signInAs(address, "Tamsel Orrowick");
  const act = (name: string) =>
    somebody().send(`/api/members/${id}/${name}`, { reason: "Sent the same claim forty times." }, { cookie });
  expect((await act("suspend")).status).toBe(200);
  expect(await account(client)).toBe(307);
  const signIn = () => somebody().send("/api/sign-in/password", { email, password: PASSWORD });
  expect(await refusalOf(await signIn())).toBe("403 email account-suspended");
  expect((await act("restore")).status).toBe(200);
  expect((await signIn()).status).toBe(200);
  const page = await (
    await fetch(`${address}/moderation/members?member=${id}`, { headers: { cookie } })
  ).text();
  expect(page.split("Sent the same claim forty times.").length - 1).toBeGreaterThanOrEqual(2);
});

it("refuses what another site's page sends", async () => {
  for (const path of [
    "/api/sign-in/password",
    "/api/sign-in/demo",
    "/api/sign-in/elsewhere",
    "/api/join",
    "/api/sign-out",
    "/api/account/profile",
  ]) {
    const headers = { "sec-fetch-site": "cross-site" };
    expect(await refusalOf(await somebody().send(path, {}, headers)), path).toBe("403 origin same-origin");
  }
});

it("goes on to no other site", async () => {
  const id = DEMO_MEMBERS[0]?.id ?? "";
  for (const next of ["https://evil.example/", "//evil.example", "/\\evil.example", "/\t/evil.example"]) {
    const led = await somebody().send("/api/sign-in/demo", { member: id, next }, { accept: "text/html" });
    expect(led.headers.get("location"), next).toBe("/");
    const page = await (await somebody().get(`/sign-in?next=${encodeURIComponent(next)}`)).text();
    const leads = [...page.matchAll(/(?:href|action|name="next" value)="([^"]*)"/g)].map(([, to]) => to);
    expect(leads, next).toContain("/");
    expect(leads.join(" "), next).not.toContain("evil.example");
  }
});

it("leads who is not signed in to signing in, and back to the form with what was typed", async () => {
  const client = somebody();
  const typed = { maker: "tobias-bodkin", stake: "trade", note: "Two flagons." };
  const headers = { accept: "text/html", referer: `${address}/account?said=joined` };
  const led = await client.send("/api/interests/declare", typed, headers);
  expect(led.status).toBe(303);
  const next = new URL(led.headers.get("location") ?? "", address).searchParams.get("next") ?? "";
  expect(next).toMatch(/^\/account\?form=[\w-]+$/);
  const sent = { member: DEMO_MEMBERS[0]?.id ?? "", next };
  const signedIn = await client.send("/api/sign-in/demo", sent, { accept: "text/html" });
  const page = await (await client.get(signedIn.headers.get("location") ?? "")).text();
  expect(page).toContain('value="Two flagons."');
});

it("offers none of next-auth's own pages, and no provider that is not set", async () => {
  for (const path of [
    "signin",
    "signout",
    "session",
    "providers",
    "csrf",
    "callback/oidc",
    "callback/password",
  ])
    expect((await fetch(`${address}/api/auth/${path}`, { redirect: "manual" })).status, path).toBe(404);
  expect((await somebody().send("/api/sign-in/elsewhere", {})).status).toBe(404);
});

it("gives no member of the demo a password that would outlast it", async () => {
  const cookie = await signInAs(address, "Wenda Thorsley");
  const answer = await somebody().send("/api/account/password", { new_password: PASSWORD }, { cookie });
  expect(await refusalOf(answer)).toBe("422 new_password demo-account");
  expect(await (await fetch(`${address}/account`, { headers: { cookie } })).text()).not.toContain(
    'name="new_password"',
  );
});

it("names no member of the demo who is none", async () => {
  for (const id of ["", "x", (await member()).id])
    expect((await somebody().send("/api/sign-in/demo", { member: id })).status).toBe(404);
});
