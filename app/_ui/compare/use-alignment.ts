import { useEffect, useState } from "react";
import type { Alignment } from "#core/photographs/alignment";

export type AlignmentState =
  | { readonly now: "unasked" | "asking" | "none" | "failed" }
  | { readonly now: "found"; readonly alignment: Alignment; readonly homography: readonly number[] };

/**
 * Asks once how two photographs lie over each other, when it is first wanted, and keeps the answer of each.
 * @param address where the answer is to be had
 */
export function useAlignment(address: string, wanted: boolean) {
  const [answers, setAnswers] = useState<Readonly<Record<string, AlignmentState>>>({});
  const state = answers[address] ?? { now: "unasked" };
  const ask = wanted && state.now === "unasked";
  useEffect(() => {
    if (!ask) return;
    const put = (answer: AlignmentState) => setAnswers((before) => ({ ...before, [address]: answer }));
    put({ now: "asking" });
    read(address).then(put, () => put({ now: "failed" }));
  }, [ask, address]);
  return { state, again: () => setAnswers((before) => ({ ...before, [address]: { now: "unasked" } })) };
}

async function read(address: string): Promise<AlignmentState> {
  const answer = await fetch(address);
  if (!answer.ok) return { now: "failed" };
  const alignment = (await answer.json()) as Alignment;
  return alignment.plausible && alignment.homography
    ? { now: "found", alignment, homography: alignment.homography }
    : { now: "none" };
}
