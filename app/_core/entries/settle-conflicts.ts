import type { Conflict, Merged } from "./merge-content.ts";

export const CHOICES = ["mine", "theirs", "own"] as const;
type Choice = (typeof CHOICES)[number];

/** What a person chose for the conflict of a group; `own` is a text of theirs that takes the place of both. */
export type Settled = { readonly choice: Choice; readonly own: string };

/** Can a text of one's own be put in the place of both? Only where the group is one field. */
export const isOneField = ({ group, base, mine, theirs }: Conflict): boolean =>
  [base, mine, theirs].every((side) => Object.keys(side).every((field) => field === group));

/**
 * Everything that was merged, with the conflicts settled as chosen.
 * @returns null while a conflict has no choice
 */
export function settleConflicts(
  { merged, conflicts }: Merged,
  chosen: (group: string) => Settled | null,
): Readonly<Record<string, string>> | null {
  const settled: Record<string, string> = { ...merged };
  for (const conflict of conflicts) {
    const choice = chosen(conflict.group);
    if (choice === null) return null;
    const { mine, theirs, group } = conflict;
    for (const field of [...Object.keys(mine), ...Object.keys(theirs)]) delete settled[field];
    if (choice.choice === "own" && isOneField(conflict)) settled[group] = choice.own;
    else Object.assign(settled, choice.choice === "theirs" ? theirs : mine);
  }
  return settled;
}
