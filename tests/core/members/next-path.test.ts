import fc from "fast-check";
import { expect, it } from "vitest";
import { nextPath } from "#core/members/next-path";

const SITE = "http://host.example";

it.each(["/", "/entries/anchor?form=x#votes", "/members/0190-x", "/a//b"])("goes on to %s", (path) => {
  expect(nextPath(path)).toBe(path);
});

it.each([
  undefined,
  "",
  "entries",
  "//evil.example",
  "/\\evil.example",
  "/a\\b",
  "\\\\evil.example",
  "https://evil.example/",
  "javascript:alert(1)",
  " /entries",
  "/\t/evil.example",
  "/\n/evil.example",
  "/\u200b/x",
  `/${"x".repeat(1000)}`,
])("leads to the first page instead of %j", (asked) => {
  expect(nextPath(asked)).toBe("/");
});

it("never leads to another site, whatever is asked", () => {
  const part = fc.constantFrom(
    "/",
    "\\",
    "@",
    ":",
    "?",
    "#",
    ".",
    "evil.example",
    "http:",
    "\t",
    "\n",
    " ",
    "a",
  );
  fc.assert(
    fc.property(fc.array(part, { maxLength: 8 }), (parts) => {
      expect(new URL(nextPath(parts.join("")), SITE).origin).toBe(SITE);
    }),
    { numRuns: 5000 },
  );
});
