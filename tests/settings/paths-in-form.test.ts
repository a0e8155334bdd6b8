import { expect, it } from "vitest";
import { pathsIn } from "#web/paths-in-form";

const doneFrom = (done: string) => pathsIn({ done }, "hare", "vote").done;

it.each(["/entries/hare/challenges/-Zb_9", "/entries/hare/challenges/_x", "/review"])(
  "leads on to %s, whatever the token of a form begins with",
  (path) => expect(doneFrom(path)).toBe(`${path}?said=vote`),
);

it.each(["", "//elsewhere.example", "/a/../b", "/a?b=c", "https://elsewhere.example", "/a/", "/a b", "/a#b"])(
  "leads to the entry instead of to “%s”",
  (path) => expect(doneFrom(path)).toBe("/entries/hare?said=vote"),
);
