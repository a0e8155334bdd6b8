import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { overflowOf, violationsOf } from "../setup/accessibility.ts";
import { type OpenedBrowser, openBrowser } from "../setup/browser.ts";
import { signInAs, signInPage } from "../setup/sign-in.ts";

const address = inject("appAddress");
const OWNER = "Ottoline Sarn";
const PARTS = [
  "",
  "/examine",
  "/measure",
  "/marks",
  "/provenance",
  "/condition",
  "/finding",
  "/share",
  "/history",
];
/** Every width in light, and the one of a phone in dark. */
const LOOKS = [
  ["light", [1280, 390, 320]],
  ["dark", [390]],
] as const;

let browser: OpenedBrowser;
let paths: readonly (readonly [path: string, who: string | null])[];
beforeAll(async () => {
  browser = await openBrowser();
  const object = await demoObject();
  paths = [
    ["/objects", null],
    ["/objects", OWNER],
    ["/objects/new", OWNER],
    ["/objects/take?v=1&e=st*g*1921-03-27*650***Given+at+Easter&e=nu*k*1906/..*990*p**Design+470001", OWNER],
    [object, null],
    ...PARTS.map((part) => [object + part, OWNER] as const),
    [await measuredOn(object), OWNER],
    [`${object}/report`, null],
  ];
});
afterAll(() => browser.close());

/** Path of the demo's object file, which is published. */
async function demoObject(): Promise<string> {
  const html = await (await fetch(`${address}/objects`)).text();
  const path = /href="(\/objects\/[\w-]{20,})">[^<]*Thistledown/.exec(html)?.[1];
  if (!path) throw new Error("The demo must have published an object file.");
  return path;
}

/** Where its first photograph is measured on. */
async function measuredOn(object: string): Promise<string> {
  const cookie = await signInAs(address, OWNER);
  const html = await (await fetch(`${address}${object}/measure`, { headers: { cookie } })).text();
  const path = /href="([^"]*\/measure\?on=[^"#]*)/.exec(html)?.[1];
  if (!path) throw new Error("The demo's object file must have a photograph to measure on.");
  return path;
}

describe.each(LOOKS)("every page of object files, in the %s theme", (colorScheme, widths) => {
  it.each(widths)(
    "breaks no rule of WCAG 2.2 AA that axe-core knows, and fits, %d pixels wide",
    async (width) => {
      const reader = await browser.newPage({ colorScheme, viewport: { width, height: 800 } });
      const owner = await browser.newPage({ colorScheme, viewport: { width, height: 800 } });
      await signInPage(owner, address, OWNER);
      for (const [path, who] of paths) {
        const page = who === null ? reader : owner;
        await page.goto(address + path);
        expect(await overflowOf(page), path).toBeLessThanOrEqual(0);
        expect(await violationsOf(page), path).toEqual([]);
      }
      await Promise.all([reader.context().close(), owner.context().close()]);
    },
    90_000,
  );
});
