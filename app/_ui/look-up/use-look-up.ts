import { useRouter } from "next/navigation";
import { useEffect, useRef, useState } from "react";
import type { FieldError } from "#core/field-error";
import type { Stage } from "#core/look-ups/look-up";
import { sendLookUp } from "./send-look-up.ts";

export type LookUpState =
  | { readonly now: "idle" }
  | { readonly now: "running"; readonly uploaded: number; readonly stage: Stage | null }
  | { readonly now: "refused"; readonly error: FieldError };

export type Running = Extract<LookUpState, { now: "running" }>;

/** Sends look-ups one at a time and goes to the answer; leaving the page cancels the one on its way. */
export function useLookUp() {
  const router = useRouter();
  const [state, setState] = useState<LookUpState>({ now: "idle" });
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  async function send(form: FormData) {
    running.current?.abort();
    const controller = new AbortController();
    running.current = controller;
    let at: Running = { now: "running", uploaded: 0, stage: null };
    setState(at);
    try {
      const answer = await sendLookUp(
        form,
        (report) => {
          at = { ...at, ...report };
          setState(at);
        },
        controller.signal,
      );
      if ("error" in answer) setState({ now: "refused", error: answer.error });
      else {
        setState({ ...at, stage: "done" });
        router.push(`/look-ups/${answer.id}`);
      }
    } catch (error) {
      if (!(error instanceof DOMException && error.name === "AbortError")) throw error;
    }
  }

  function cancel() {
    running.current?.abort();
    setState({ now: "idle" });
  }

  return {
    state,
    send,
    cancel,
    clear: cancel,
  };
}
