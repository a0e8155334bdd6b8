import type { FieldError } from "../field-error.ts";
import type { Action } from "../permissions.ts";
import { ok, type Result } from "../result.ts";
import type { EntryCommand } from "./command.ts";
import { ownSlug } from "./decide-challenge.ts";
import type { Hidden } from "./entry-event.ts";
import type { EntryHistory } from "./entry-history.ts";
import { findRevision } from "./find-in-history.ts";
import { badText, type Decision, LENGTHS, notAllowed, nothing, refuse, signed } from "./refuse.ts";
import { hiddenContent } from "./standing.ts";

type Acting = Extract<EntryCommand, { type: "hide content" | "merge" | "lock" | "undo an act" }>;

const NEEDS = {
  "hide content": "hide content",
  merge: "merge entries",
  lock: "lock an entry",
  "undo an act": "undo an act",
} as const satisfies Readonly<Record<Acting["type"], Action>>;

/** What a moderator does to an entry. */
export function act(history: EntryHistory, command: Acting): Decision {
  const { at, by, act: id, reason } = command;
  const refused = notAllowed(by, NEEDS[command.type]);
  if (refused) return refused;
  if (command.type === "undo an act") return undo(history, command);
  if (history.acts.some((each) => each.id === id) || isSo(history, command)) return nothing;
  const bad = cannotBe(history, command) ?? badText("reason", reason, LENGTHS.act);
  if (bad) return bad;
  const done = { at, by: signed(by), act: id, reason };
  switch (command.type) {
    case "hide content":
      return ok([{ type: "content hidden", ...done, what: command.what, ground: command.ground }]);
    case "merge":
      return ok([{ type: "merged", ...done, into: command.into }]);
    case "lock":
      return ok([{ type: "locked", ...done }]);
  }
}

type Doing = Exclude<Acting, { type: "undo an act" }>;

/** Has somebody done that already, by another act? */
function isSo(history: EntryHistory, command: Doing): boolean {
  switch (command.type) {
    case "hide content":
      return hiddenContent(history).some((hidden) => isSame(hidden, command.what));
    case "merge":
      return mergedInto(history) === command.into;
    case "lock":
      return history.locked;
  }
}

function cannotBe(history: EntryHistory, command: Doing): Result<never, FieldError> | null {
  switch (command.type) {
    case "hide content": {
      const { what } = command;
      if (what.kind === "photograph" || findRevision(history, what.revision)) return null;
      return refuse("revision", "revision-unknown", what.revision);
    }
    case "merge": {
      const into = mergedInto(history);
      if (into !== null) return refuse("into", "merged-already", into);
      return command.into === ownSlug(history) ? refuse("into", "into-itself", command.into) : null;
    }
    case "lock":
      return null;
  }
}

/** Another moderator takes an act back. */
function undo(
  history: EntryHistory,
  { at, by, act: id, reason }: Extract<Acting, { type: "undo an act" }>,
): Decision {
  const done = history.acts.find((each) => each.id === id);
  if (!done) return refuse("act", "act-unknown", id);
  if (done.undone) return nothing;
  if (done.by.id === by.id) return refuse("member", "own-act", by.name);
  return (
    badText("reason", reason, LENGTHS.act) ??
    ok([{ type: "act undone", at, by: signed(by), act: id, reason }])
  );
}

function mergedInto({ acts }: EntryHistory): string | null {
  const found = acts.find(({ did, undone }) => did.kind === "merged" && undone === null)?.did;
  return found?.kind === "merged" ? found.into : null;
}

function isSame(a: Hidden, b: Hidden): boolean {
  if (a.kind === "photograph") return b.kind === "photograph" && a.photograph === b.photograph;
  return b.kind === "text" && a.revision === b.revision && a.field === b.field;
}
