import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { openImportFolder } from "#adapters/import-folder";
import { whatItHas } from "#core/entries/what-it-has";
import type { FieldError } from "#core/field-error";
import { entryFromColumns } from "#core/import/entry-from-columns";
import type { FolderRecord } from "#core/import/folder-record";
import { makerFromColumns } from "#core/import/maker-from-columns";
import { photographFromColumns } from "#core/import/photograph-from-columns";
import { actingAs } from "#core/members/account";
import type { ActingMember } from "#core/members/member";
import type { Typed } from "#core/questions/typed-text";
import { ok, type Result } from "#core/result";
import { decide } from "#core/review/decide";
import type { EntryEvent } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { evolve } from "#core/review/evolve";
import { DEFAULT_POLICY } from "#core/review/policy";
import { submitRevision } from "#usecases/submit-revision";
import type { Live } from "#web/live";
import { sentence } from "./error-sentences.ts";
import { type Counts, DEMO_COUNTS, planStories } from "./histories/plan-stories.ts";
import type { Step, Story, Subject } from "./histories/story.ts";
import { evening, morning } from "./histories/waking-hours.ts";

type MembersRead = {
  readonly members: Pick<Live["members"], "find">;
  readonly demoMembers: Live["demoMembers"];
};

const SEED = "countermark demo";
/** The father's mark, which letters tell from his daughter's: both must be found by a look-up. */
const TOLD_APART = ["pike-stamped-fish"];
const HOUR = 3_600_000;

/** What happens to the entries of a demo folder. The demo's members must be there. */
export async function readDemoStories(
  wired: MembersRead,
  folder: string,
  counts: Counts = DEMO_COUNTS,
): Promise<readonly Story[]> {
  const subjects = await readSubjects(folder);
  const members = await membersOf(wired);
  const [kept, relied] = await Promise.all([readKept(folder), readRelied(folder)]);
  return planStories(subjects, members, { counts, kept, relied, seed: SEED });
}

/** When each entry was submitted, by the stories; ISO 8601. */
export const submittedAt = (stories: readonly Story[], now: Date): ReadonlyMap<string, string> =>
  new Map(stories.map(({ entry, age }) => [entry, evening(now.getTime() - age * HOUR).toISOString()]));

/**
 * Lets the stories happen, each through the rules and with the time that it tells. An entry to which something has
 * happened already is left alone, and so is one that was submitted later than its story says.
 * @returns how many were told
 */
export async function tellDemoHistories(wired: Live, stories: readonly Story[]): Promise<number> {
  const last = stories.at(-1);
  if (!last || (await beginning(wired, last)) === null) return 0;
  let told = 0;
  for (const story of stories) {
    const begun = await beginning(wired, story);
    if (begun === null || story.steps.length === 0) continue;
    for (const part of inParts(story.steps)) await happen(wired, story.entry, begun, part);
    told++;
  }
  return told;
}

/** When the story of an entry begins; null when it has begun already, or is not of that entry's time. */
async function beginning({ trails, clock }: Live, { entry, age }: Story): Promise<number | null> {
  const history = (await trails.history(entry))?.history;
  const [review] = history?.reviews ?? [];
  if (!history || !review || !isUntouched(history)) return null;
  const begun = Date.parse(review.submittedAt);
  return begun + age * HOUR > clock.now().getTime() ? null : begun;
}

const isUntouched = ({ revisions, reviews, acts }: EntryHistory): boolean =>
  revisions.length === 1 &&
  acts.length === 0 &&
  reviews.every(({ votes, end }) => votes.length === 0 && end === null);

/** Steps that are decided in one go, parted where somebody submits a revision. */
function inParts(steps: readonly Step[]): readonly (readonly Step[])[] {
  const parts: Step[][] = [[]];
  for (const step of steps) {
    if (step.is === "revision") parts.push([step], []);
    else parts.at(-1)?.push(step);
  }
  return parts.filter((part) => part.length > 0);
}

async function happen(wired: Live, entry: string, begun: number, steps: readonly Step[]): Promise<void> {
  const timeOf = ({ after }: Step) => morning(begun + after * HOUR);
  const [first] = steps;
  if (first?.is === "revision") {
    passed(
      entry,
      await revise({ ...wired, policy: DEFAULT_POLICY, clock: { now: () => timeOf(first) } }, entry, first),
    );
    return;
  }
  const changed = await wired.trails.change(entry, (history) => {
    const events: EntryEvent[] = [];
    let now = history;
    for (const step of steps) {
      if (step.is === "revision") continue;
      const newest = now.revisions.at(-1)?.id ?? "";
      const decided = decide(now, step.give(timeOf(step).toISOString(), newest));
      if (!decided.ok) return decided;
      events.push(...decided.value);
      now = decided.value.reduce(evolve, now);
    }
    return ok(events);
  });
  passed(entry, changed);
}

async function revise(wired: Live, entry: string, step: Extract<Step, { is: "revision" }>) {
  const [newest] = (await wired.revisions.list(entry)).slice(-1);
  const shown = newest && (await wired.revisions.shown(entry, newest.number));
  if (!shown) throw new Error(`${entry}: there is no revision to make another from.`);
  const photographs = shown.view.photographs.map(({ id: _id, ...photograph }) => photograph);
  const { content, summary } = step;
  const given = { entry, content, photographs, parents: [newest.id], summary, coAuthors: [] };
  return submitRevision(wired, step.by, given);
}

/** Entries that no story may take out of look-ups: those that the photographs to try and the questions lead to. */
async function readKept(folder: string): Promise<ReadonlySet<string>> {
  const texts = await Promise.all(
    ["try/try.csv", "questions/questions.json"].map((name) =>
      readFile(join(folder, name), "utf8").catch(() => ""),
    ),
  );
  const named = texts.flatMap((text) => text.match(/[a-z]+(-[a-z0-9]+)+/g) ?? []);
  return new Set([...named, ...TOLD_APART]);
}

/** Entries that an object file of the demo rests on. */
async function readRelied(folder: string): Promise<ReadonlySet<string>> {
  const text = await readFile(join(folder, "objects", "objects.json"), "utf8").catch(() => "[]");
  const files = JSON.parse(text) as readonly { readonly steps: readonly { readonly with: Typed }[] }[];
  return new Set(files.flatMap(({ steps }) => steps.flatMap(({ with: { entry } }) => entry ?? [])));
}

async function membersOf({ members, demoMembers }: MembersRead) {
  const acting: ActingMember[] = [];
  for (const { id } of await demoMembers.all()) {
    const member = await members.find(id);
    if (member) acting.push(actingAs(member));
  }
  return acting;
}

async function readSubjects(folder: string): Promise<readonly Subject[]> {
  const { makers, entries, photographs } = await openImportFolder(folder);
  const names = new Map(read(makers, makerFromColumns).map(({ slug, name }) => [slug, name]));
  const shown = read(photographs, photographFromColumns);
  return read(entries, entryFromColumns).map(({ slug, content }) => ({
    slug,
    content,
    maker: names.get(content.maker ?? "") ?? "",
    has: whatItHas(
      content,
      shown.filter(({ entry }) => entry === slug),
    ),
  }));
}

function read<T>(
  records: readonly FolderRecord[],
  parse: (columns: FolderRecord["columns"]) => Result<T, readonly FieldError[]>,
): readonly T[] {
  return records.map(({ columns, line }) => passed(`line ${line}`, parse(columns)));
}

/** What a rule let pass; what it did not is a fault of the demo. */
function passed<T>(where: string, result: Result<T, FieldError | readonly FieldError[]>): T {
  if (result.ok) return result.value;
  throw new Error(
    `${where}: a history of the demo was refused:\n${[result.error].flat().map(sentence).join("\n")}`,
  );
}
