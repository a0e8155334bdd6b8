import type { FieldError } from "#core/field-error";
import { forgetTyped } from "./kept-typed.ts";
import { type Pending, putInOutbox, takeFromOutbox, waitingIn } from "./outbox.ts";
import { type Outcome, sendPending } from "./send-pending.ts";

/** A form that reached the host and was refused when nobody looked at it any more. */
export type RefusedForm = { readonly pending: Pending; readonly errors: readonly FieldError[] };

export type Sending = {
  readonly waiting: number;
  /** What is on its way, with the part that has left this browser. */
  readonly sending: { readonly about: string; readonly part: number } | null;
  readonly trouble: "unreachable" | "signed out" | null;
  readonly refused: readonly RefusedForm[];
  /** How many arrived since the page was opened. */
  readonly arrived: number;
};

const STILL: Sending = { waiting: 0, sending: null, trouble: null, refused: [], arrived: 0 };
const AGAIN_MS = 8_000;

/** Sends what waits for one object file, one after the other, until all of it has arrived. */
function createSender(file: string) {
  let now = STILL;
  let running: Promise<void> | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const asked = new Map<string, (outcome: Outcome) => void>();
  const say = (changes: Partial<Sending>) => {
    now = { ...now, ...changes };
    for (const listener of listeners) listener();
  };

  async function sendOne(pending: Pending): Promise<boolean> {
    const { key, about } = pending;
    say({ sending: { about, part: 0 } });
    const outcome = await sendPending(pending, (part) => say({ sending: { about, part } }));
    const answer = asked.get(key);
    if (outcome.is === "unreachable" || outcome.is === "signed out") {
      say({ sending: null, trouble: outcome.is });
      answer?.(outcome);
      return false;
    }
    await takeFromOutbox(key);
    asked.delete(key);
    if (outcome.is === "done") say({ arrived: now.arrived + 1 });
    else if (!answer) say({ refused: [...now.refused, { pending, errors: outcome.errors }] });
    answer?.(outcome);
    return true;
  }

  async function sendAll(): Promise<void> {
    for (;;) {
      const waiting = await waitingIn(file);
      say({ waiting: waiting.length });
      const [next] = waiting;
      if (!next) return say({ sending: null, trouble: null });
      if (!(await sendOne(next))) {
        timer = setTimeout(send, AGAIN_MS);
        return;
      }
    }
  }

  function send(): void {
    clearTimeout(timer);
    running ??= sendAll().finally(() => {
      running = null;
    });
  }

  return {
    now: () => now,
    listen(listener: () => void) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    send,
    /** @returns what came of it; null where this browser keeps nothing, and nothing was sent */
    async post(pending: Pending): Promise<Outcome | null> {
      const answered = new Promise<Outcome>((resolve) => asked.set(pending.key, resolve));
      if (!(await putInOutbox(pending))) return null;
      forgetTyped(file, pending.name);
      await running;
      send();
      return answered;
    },
    /** The same for a form whose page goes on to the next: a refusal is shown with what waits. */
    async leave(pending: Pending): Promise<boolean> {
      if (!(await putInOutbox(pending))) return false;
      forgetTyped(file, pending.name);
      void (running ?? Promise.resolve()).then(send);
      return true;
    },
    forget: (key: string) => say({ refused: now.refused.filter(({ pending }) => pending.key !== key) }),
  };
}

const senders = new Map<string, ReturnType<typeof createSender>>();

/** The one sender of a file on this page. */
export function senderOf(file: string): ReturnType<typeof createSender> {
  const found = senders.get(file) ?? createSender(file);
  senders.set(file, found);
  return found;
}

export const nothingSent = (): Sending => STILL;
