import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EntryCommand } from "#core/review/command";
import { decide } from "#core/review/decide";
import type { EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { evolve, historyOf, NO_HISTORY } from "#core/review/evolve";
import { REVISIONS, story } from "./drawn-stories.ts";
import { at } from "./story.ts";

type Step = {
  readonly command: EntryCommand;
  readonly before: EntryHistory;
  readonly events: readonly EntryEvent[];
  readonly history: EntryHistory;
};

function steps(commands: readonly EntryCommand[]): readonly Step[] {
  let history = NO_HISTORY;
  return commands.map((command) => {
    const before = history;
    const decided = decide(before, command);
    const events = decided.ok ? decided.value : [];
    history = events.reduce(evolve, before);
    return { command, before, events, history };
  });
}

const RUNS = { numRuns: 1500 };

describe("whatever order of commands", () => {
  it("the state kept step by step equals the fold of all events, also after they were written and read", () => {
    fc.assert(
      fc.property(story, (commands) => {
        const all = steps(commands);
        const events = all.flatMap((step) => step.events);
        expect(historyOf(events)).toEqual(all.at(-1)?.history);
        expect(historyOf(JSON.parse(JSON.stringify(events)))).toEqual(all.at(-1)?.history);
      }),
      RUNS,
    );
  });

  it("where an entry stands is told by the order of events alone, whatever a clock says", () => {
    const seen = new Set<string>();
    const standing = ({ state, verified, shown, reviews }: EntryHistory) => ({
      state,
      verified,
      shown,
      ended: reviews.map(({ end }) => end?.is),
    });
    fc.assert(
      fc.property(story, (commands) => {
        const events = steps(commands).flatMap((step) => step.events);
        const told = standing(historyOf(events));
        seen.add(told.state);
        expect(standing(historyOf(events.map((event) => ({ ...event, at: at(0) }))))).toEqual(told);
        expect(standing(historyOf(events.map((event, i) => ({ ...event, at: at(-i) }))))).toEqual(told);
      }),
      RUNS,
    );
    expect(seen.size).toBeGreaterThanOrEqual(6);
  });

  it("the same command again adds nothing, whatever it was", () => {
    const repeated = new Set<string>();
    fc.assert(
      fc.property(story, (commands) => {
        for (const { command, events, history } of steps(commands)) {
          const again = decide(history, command);
          expect(again.ok ? again.value : []).toEqual([]);
          if (events.length > 0) repeated.add(command.type);
        }
      }),
      RUNS,
    );
    expect([...repeated].sort()).toEqual([
      "answer a vote",
      "appeal",
      "challenge",
      "close what is over",
      "decide a challenge",
      "hide content",
      "lock",
      "merge",
      "record a revision",
      "submit",
      "undo an act",
      "vote",
      "vote on an appeal",
      "withdraw a submission",
    ]);
  });

  it("no revision is verified by fewer than three votes of people free to judge it", () => {
    let verified = 0;
    fc.assert(
      fc.property(story, (commands) => {
        const events = steps(commands).flatMap((step) => step.events);
        events.forEach((event, i) => {
          if (event.type !== "review closed" || event.outcome !== "verified" || event.at <= at(80)) return;
          verified += 1;
          const free = freeVotes(events.slice(0, i), event.revision);
          const support = free.filter((each) => each === "support").length;
          const oppose = free.filter((each) => each === "oppose").length;
          expect(free.length).toBeGreaterThanOrEqual(3);
          expect(event.tally).toMatchObject({ counted: free.length, support, oppose });
          expect(support * 3).toBeGreaterThanOrEqual((support + oppose) * 2);
          expect(support).toBeGreaterThan(0);
        });
      }),
      RUNS,
    );
    expect(verified).toBeGreaterThan(50);
  });

  it("an entry shows a verified revision only if its last closing or an overturned decision made it so", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(story, (commands) => {
        for (const { before, events, history } of steps(commands)) {
          seen.add(history.state);
          if (history.verified !== null) expect(history.shown).toBe(history.verified);
          if (history.verified !== before.verified && history.verified !== null)
            expect(
              events.some(
                (e) =>
                  (e.type === "review closed" && e.outcome === "verified") ||
                  (e.type === "appeal decided" && e.outcome === "overturned"),
              ),
            ).toBe(true);
          if (before.locked && !events.some(({ type }) => type === "act undone"))
            expect(
              events.filter(
                ({ type }) => type.startsWith("vote") || type === "review closed" || type === "challenged",
              ),
            ).toEqual([]);
        }
      }),
      RUNS,
    );
    expect([...seen].sort()).toEqual([
      "disputed",
      "draft",
      "not accepted",
      "superseded",
      "under review",
      "verified",
      "withdrawn",
    ]);
  });
});

/**
 * The standing votes in the latest review of a revision of people free to judge it, reckoned from the bare events by
 * names alone: of this cast only Rosa, Ruth, Rolf and Rene, and moderators who did not send it to review, are free.
 */
function freeVotes(events: readonly EntryEvent[], of: string): readonly string[] {
  const begun = events.findLastIndex((event) => event.type === "submitted" && event.revision === of);
  const standing = new Map<string, string>();
  for (const event of events.slice(begun))
    if (event.type === "vote cast" && event.revision === of) standing.set(event.voter.id, event.choice);
  const bound = new Set(["author", "other", "collector", "owner", "potter"]);
  // What was verified before is nobody's change any more: its author is free to judge what others made of it.
  const authors = REVISIONS.find((each) => each.id === of)?.authors ?? [];
  const first = events.some(
    (event) => event.type === "review closed" && event.outcome === "verified" && event.revision === "r1",
  );
  if (first && !authors.includes("author")) bound.delete("author");
  const about = new Map(
    events.flatMap((event) => (event.type === "challenged" ? [[event.challenge, event.revision]] : [])),
  );
  const sent = new Set<string>();
  for (const event of events) {
    if (event.type !== "challenge decided") continue;
    const { consequence } = event;
    const to =
      consequence.kind === "new revision to review" ? consequence.revision : about.get(event.challenge);
    if (to === of) sent.add(event.challenge);
  }
  for (const event of events)
    if (
      (event.type === "challenge decided" || event.type === "appeal vote cast") &&
      sent.has(event.challenge) &&
      event.by.id !== null
    )
      bound.add(event.by.id);
  return [...standing].flatMap(([who, choice]) => (bound.has(who) ? [] : [choice]));
}
