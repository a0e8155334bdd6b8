import { existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import { beforeAll, describe, expect, inject, it } from "vitest";

const address = inject("appAddress");
const data = inject("appData");

type Bytes = Uint8Array<ArrayBuffer>;

type Hostile = {
  readonly what: string;
  readonly name: string;
  readonly type: string;
  readonly bytes: () => Promise<Bytes> | Bytes;
  readonly status: 413 | 422;
  readonly rule: string;
  /** What the refusal must say was received. */
  readonly received: RegExp;
};

const HOSTILE: readonly Hostile[] = [
  {
    what: "a text named .jpg",
    name: "mark.jpg",
    type: "image/jpeg",
    bytes: () => new TextEncoder().encode("This is a letter, not a photograph.\n".repeat(40)),
    status: 422,
    rule: "image-type",
    received: /text/,
  },
  {
    what: "a PNG of one pixel that claims 60,000 x 60,000",
    name: "mark.png",
    type: "image/png",
    bytes: () => pngThatClaims(60_000, 60_000),
    status: 422,
    rule: "image-pixels",
    received: /60000 x 60000|more pixels/,
  },
  {
    what: "a JPEG cut off in the middle",
    name: "mark.jpg",
    type: "image/jpeg",
    bytes: truncatedJpeg,
    status: 422,
    rule: "image-damaged",
    received: /./,
  },
  {
    what: "an SVG with a script",
    name: "mark.svg",
    type: "image/svg+xml",
    bytes: () =>
      new TextEncoder().encode(
        '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200"><script>alert(1)</script><rect width="200" height="200"/></svg>',
      ),
    status: 422,
    rule: "image-type",
    received: /text|svg|xml/,
  },
  {
    what: "an SVG named .png",
    name: "mark.png",
    type: "image/png",
    bytes: () =>
      new TextEncoder().encode(
        '<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="200" height="200"><image href="file:///etc/hostname"/></svg>',
      ),
    status: 422,
    rule: "image-type",
    received: /text|svg|xml/,
  },
  {
    what: "nothing, 0 bytes",
    name: "mark.jpg",
    type: "image/jpeg",
    bytes: () => new Uint8Array(0),
    status: 422,
    rule: "image-empty",
    received: /0 bytes/,
  },
  {
    what: "21 MB",
    name: "mark.jpg",
    type: "image/jpeg",
    bytes: () => new Uint8Array(21 * 1024 * 1024).fill(0xff),
    status: 413,
    rule: "image-bytes",
    received: /21/,
  },
];

describe("an upload that is not an honest photograph", () => {
  let before: readonly string[] = [];
  beforeAll(async () => {
    before = await kept();
  });

  it.each(HOSTILE)(
    "$what is refused in words, and nothing is kept",
    async ({ name, type, bytes, status, rule, received }) => {
      const photograph = await bytes();
      const asProgram = await lookUp(photograph, name, type, "application/json");
      expect(asProgram.status).toBe(status);
      const { error } = (await asProgram.json()) as { error: Record<string, string> };
      expect(error).toMatchObject({ field: "photograph", rule });
      expect(error.received).toMatch(received);

      // Where its mark is, is not asked of it either.
      const forRegions = await send("regions", photograph, name, type, "application/json");
      expect(forRegions.status).toBe(status);
      expect(await forRegions.json()).toMatchObject({ error: { field: "photograph", rule } });

      // A browser without JavaScript is sent to a page that says the same in a sentence.
      const asPerson = await lookUp(photograph, name, type, "text/html");
      expect(asPerson.redirected).toBe(true);
      expect(asPerson.status).toBe(200);
      const page = textOf(await asPerson.text());
      expect(page).toContain(textOf(error.received ?? ""));
      expect(page).not.toContain(rule);
      expect(await kept()).toEqual(before);
    },
  );

  it("leaves the app alive: an honest photograph is looked up right after", async () => {
    const honest = await sharp({ create: { width: 300, height: 300, channels: 3, background: "#b9a27c" } })
      .composite([
        {
          input: Buffer.from(
            '<svg width="300" height="300"><circle cx="150" cy="150" r="90" fill="#333"/></svg>',
          ),
        },
      ])
      .jpeg()
      .toBuffer();
    const response = await lookUp(honest, "mark.jpg", "image/jpeg", "application/json");
    expect(response.status).toBe(200);
    expect(await response.json()).toMatchObject({
      id: expect.stringMatching(/./),
      query: { width: 300, height: 300 },
    });
    // Proves that what is kept is looked for in the right place: an honest photograph is kept.
    expect((await kept()).length).toBe(before.length + 1);
  });
});

const lookUp = (bytes: Bytes, name: string, type: string, accept: string) =>
  send("look-ups", bytes, name, type, accept);

function send(
  where: "look-ups" | "regions",
  bytes: Bytes,
  name: string,
  type: string,
  accept: string,
): Promise<Response> {
  const form = new FormData();
  form.set("photograph", new File([bytes], name, { type }));
  return fetch(`${address}/api/${where}`, { method: "POST", body: form, headers: { accept } });
}

/** The words of a page, without its tags and scripts. */
function textOf(html: string): string {
  return html
    .replace(/<script[\s\S]*?<\/script>/g, " ")
    .replace(/<[^>]+>/g, " ")
    .replace(/&#x27;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, "&")
    .replace(/\s+/g, " ")
    .trim();
}

/** Every file of images that the app keeps. */
async function kept(): Promise<readonly string[]> {
  const folder = join(data, "images");
  // The folder is made with the first image.
  if (!existsSync(folder)) return [];
  const names = await readdir(folder, { recursive: true, withFileTypes: true });
  return names
    .filter((entry) => entry.isFile())
    .map((entry) => entry.name)
    .sort();
}

/** A whole PNG whose header states another size than its single pixel has. */
function pngThatClaims(width: number, height: number): Bytes {
  const chunk = (type: string, body: Buffer) => {
    const named = Buffer.concat([Buffer.from(type, "latin1"), body]);
    const length = Buffer.alloc(4);
    length.writeUInt32BE(body.length);
    const check = Buffer.alloc(4);
    check.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, check]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 0, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(Buffer.from([0, 128]))),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

async function truncatedJpeg(): Promise<Bytes> {
  const noise = { type: "gaussian" as const, mean: 128, sigma: 30 };
  const whole = await sharp({ create: { width: 400, height: 400, channels: 3, background: "#888", noise } })
    .jpeg({ quality: 90 })
    .toBuffer();
  return new Uint8Array(whole.subarray(0, Math.floor(whole.length / 2)));
}
