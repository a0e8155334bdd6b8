import fc from "fast-check";
import { expect, it } from "vitest";
import { hashOfValue } from "#adapters/canonical-json";
import { checkChain, eventOf, linksAfter, type TrailEvent } from "#core/trail/chain";
import type { Link } from "#core/trail/link";

const by = { id: null, name: "somebody" };
const event = (type: string, said: unknown): TrailEvent & { said: unknown } => ({
  type,
  at: "2026-11-27T06:20:00.000Z",
  by,
  said,
});
const events = ["recorded", "submitted", "voted"].map((type, i) => event(type, { i }));
const links = linksAfter("entry:1", null, events, hashOfValue);
const [first, second, third] = links as readonly [Link, Link, Link];

it("numbers from 1 and chains each link to the one before", () => {
  expect(links.map(({ number }) => number)).toEqual([1, 2, 3]);
  expect(links.map(({ previous }) => previous)).toEqual([null, first.hash, second.hash]);
  expect(checkChain("entry:1", links, hashOfValue)).toBeNull();
  expect(links.map((link) => eventOf(link))).toEqual(events);
});

it("goes on after the last link as if there had been no pause", () => {
  const paused = linksAfter("entry:1", first, events.slice(1), hashOfValue);
  expect([first, ...paused]).toEqual(links);
});

it.each([
  ["gap", 2, [first, third]],
  ["gap", 1, [second, third]],
  ["another trail", 2, [first, { ...second, trail: "entry:2" }]],
  ["wrong previous", 2, [first, { ...second, previous: third.hash }]],
  ["wrong hash", 1, [{ ...first, type: "locked" }, second]],
  ["wrong hash", 3, [first, second, { ...third, at: "2026-11-27T06:20:00.001Z" }]],
] as const)("finds a %s at link %i", (why, number, tampered) => {
  expect(checkChain("entry:1", tampered, hashOfValue)).toEqual({ number, why });
});

it("finds any change of any payload", () => {
  fc.assert(
    fc.property(
      fc.array(fc.jsonValue(), { minLength: 1 }),
      fc.nat(),
      fc.jsonValue(),
      (said, place, other) => {
        const chain = linksAfter(
          "t",
          null,
          said.map((each) => event("e", each)),
          hashOfValue,
        );
        expect(checkChain("t", chain, hashOfValue)).toBeNull();
        const index = place % chain.length;
        fc.pre(JSON.stringify(said[index]) !== JSON.stringify(other));
        const same = hashOfValue(said[index]) === hashOfValue(other);
        const tampered = chain.map((link, i) => (i === index ? { ...link, payload: { said: other } } : link));
        expect(checkChain("t", tampered, hashOfValue)).toEqual(
          same ? null : { number: index + 1, why: "wrong hash" },
        );
      },
    ),
  );
});
