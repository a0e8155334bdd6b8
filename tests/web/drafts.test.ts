import { readFileSync } from "node:fs";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";
import type { FieldError } from "#core/field-error";
import { photographsToTry } from "../setup/photographs-to-try.ts";
import { DEMO_MEMBERS, signInAs } from "../setup/sign-in.ts";

const address = inject("appAddress");
let cookies: { readonly ansa: string; readonly bram: string };
beforeAll(async () => {
  const [ansa, bram] = DEMO_MEMBERS;
  cookies = {
    ansa: await signInAs(address, ansa?.id ?? ""),
    bram: await signInAs(address, bram?.id ?? ""),
  };
});

type Sent = Readonly<Record<string, string | Blob>>;

function send(path: string, fields: Sent, cookie = cookies.ansa, headers: Record<string, string> = {}) {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return fetch(address + path, {
    method: "POST",
    body: form,
    redirect: "manual",
    headers: { accept: "application/json", cookie, ...headers },
  });
}

async function begin(cookie = cookies.ansa): Promise<string> {
  const answer = await send("/api/drafts", {}, cookie);
  expect(answer.status).toBe(201);
  return ((await answer.json()) as { id: string }).id;
}

const refusalOf = async (answer: Response) => {
  const { error } = (await answer.json()) as { error?: FieldError };
  return `${answer.status} ${error?.field} ${error?.rule}`;
};
const page = (id: string, cookie = cookies.ansa) =>
  fetch(`${address}/contribute/${id}`, { headers: { cookie }, redirect: "manual" });

describe("somebody else's draft", () => {
  it.each(["", "/photographs", "/discard", "/settle"])("can't be written to: POST %s", async (act) => {
    const id = await begin();
    const fields = { version: "1", title: "Theirs", photograph: new Blob(["x"]) };
    expect((await send(`/api/drafts/${id}${act}`, fields, cookies.bram)).status).toBe(404);
    expect((await send(`/api/drafts/${id}${act}`, fields, "")).status).toBe(401);
    expect(await (await page(id)).text()).not.toContain("Theirs");
  });

  it("can't be read, nor its preview, nor what comes near its photographs", async () => {
    const id = await begin();
    for (const path of ["", "/preview", "/meanwhile", "/differing"])
      expect((await page(id + path, cookies.bram)).status, path).toBe(404);
    expect((await page(id, "")).headers.get("location")).toContain("/sign-in?next=");
    const alike = await fetch(`${address}/api/drafts/${id}/alike?photograph=${"0".repeat(64)}`, {
      headers: { cookie: cookies.bram },
    });
    expect(alike.status).toBe(404);
  });
});

it("refuses what another site's page sends", async () => {
  const id = await begin();
  for (const path of [
    "/api/drafts",
    ...["", "/photographs", "/discard", "/settle"].map((act) => `/api/drafts/${id}${act}`),
  ]) {
    const answer = await send(path, { version: "1" }, cookies.ansa, { "sec-fetch-site": "cross-site" });
    expect(await refusalOf(answer), path).toBe("403 origin same-origin");
  }
});

describe("a draft's form", () => {
  it("is saved once for each version, and a second of an older one is refused", async () => {
    const id = await begin();
    expect(await (await send(`/api/drafts/${id}`, { version: "1", title: "One" })).json()).toMatchObject({
      version: 2,
      typed: { title: "One" },
    });
    expect(await refusalOf(await send(`/api/drafts/${id}`, { version: "1", title: "Two" }))).toBe(
      "409 draft draft-newer",
    );
    expect(await (await page(id)).text()).toContain('value="One"');
  });

  it("keeps the fields of the form alone, whatever is sent", async () => {
    const id = await begin();
    const fields = {
      version: "1",
      title: "<script>alert(1)</script>",
      owner: "me",
      constructor: "x",
      __proto__x: "y",
    };
    const answer = await send(`/api/drafts/${id}`, fields);
    expect(((await answer.json()) as { typed: object }).typed).toEqual({ title: fields.title });
    expect(await (await page(id)).text()).not.toContain("<script>alert(1)");
  });

  it.each([
    ["version", "soon"],
    ["version", "-1"],
    ["version", ""],
  ])("with %s %j is not saved", async (name, value) => {
    const id = await begin();
    expect((await send(`/api/drafts/${id}`, { [name]: value, title: "Lost" })).status).toBe(409);
  });

  it("is refused as a whole when what is submitted is wrong, by field and rule", async () => {
    const id = await begin();
    const answer = await send(`/api/drafts/${id}`, { version: "1", act: "submit", period: "soon" });
    expect(answer.status).toBe(422);
    const { errors } = (await answer.json()) as { errors: FieldError[] };
    expect(errors.map(({ field, rule }) => `${field} ${rule}`)).toEqual([
      "photograph photograph-needed",
      "title required",
      "kind required",
      "field required",
      "description required",
      "period edtf",
    ]);
  });
});

describe("a photograph sent to a draft", () => {
  const upload = async (id: string, bytes: Uint8Array<ArrayBuffer> | string) =>
    send(`/api/drafts/${id}/photographs`, { photograph: new Blob([bytes], { type: "image/jpeg" }) });
  const draftOf = async (id: string) => (await page(id)).text();

  it.each([
    ["is text", async () => new TextEncoder().encode("no image at all"), "422 photograph image-type"],
    ["is empty", async () => new Uint8Array(), "422 photograph image-empty"],
    [
      "is cut off",
      async () => new Uint8Array(readFileSync(photographsToTry()[0]?.path ?? "").subarray(0, 900)),
      "422 photograph image-damaged",
    ],
    [
      "has more pixels than can be read",
      async () =>
        new Uint8Array(
          await sharp({ create: { width: 9000, height: 9000, channels: 3, background: "#888" } })
            .png({ compressionLevel: 9 })
            .toBuffer(),
        ),
      "422 photograph image-pixels",
    ],
    [
      "is larger than 20 MB",
      async () => new Uint8Array(21 * 1024 * 1024).fill(255),
      "413 photograph image-bytes",
    ],
  ] as const)("that %s is refused, and nothing is stored", async (_, make, refusal) => {
    const id = await begin();
    expect(await refusalOf(await upload(id, await make()))).toBe(refusal);
    expect(await draftOf(id)).not.toContain("/images/");
  });

  it("is stripped of what the camera wrote into it", async () => {
    const id = await begin();
    const told = await sharp(photographsToTry()[1]?.path ?? "")
      .withExif({ IFD0: { Copyright: "Nobody", Make: "A camera" } })
      .jpeg()
      .toBuffer();
    const answer = await upload(id, new Uint8Array(told));
    expect(answer.status).toBe(201);
    const { sha256 } = (await answer.json()) as { sha256: string };
    const kept = await (await fetch(`${address}/images/${sha256}`)).arrayBuffer();
    expect((await sharp(kept).metadata()).exif).toBeUndefined();
    expect(await refusalOf(await upload(id, new Uint8Array(told)))).toBe("422 photograph photograph-twice");
  });
});
