import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { v5 } from "uuid";
import type { FieldError } from "#core/field-error";
import { actingAs } from "#core/members/account";
import type { ActingMember } from "#core/members/member";
import { anomaliesOf } from "#core/object-files/anomalies";
import { MOST_FILES } from "#core/object-files/kept-file";
import { photographOf } from "#core/object-files/photograph-of";
import { readCommand } from "#core/object-files/read-command";
import type { Family } from "#core/object-files/vocabulary";
import type { Typed } from "#core/questions/typed-text";
import type { Result } from "#core/result";
import { acceptMatch } from "#usecases/accept-match";
import { keepObjectImage } from "#usecases/keep-object-image";
import { lookUpMark } from "#usecases/look-up-mark";
import { lookUpObjectMark } from "#usecases/look-up-object-mark";
import { changeObjectFile } from "#usecases/object-files/change-object-file";
import { matchedEntries } from "#usecases/object-files/matched-entries";
import { openObjectFile } from "#usecases/open-object-file";
import { openObjectToOthers } from "#usecases/open-object-to-others";
import { showLookUp } from "#usecases/show-look-up";
import type { Live } from "#web/live";
import { sentence } from "./error-sentences.ts";

type Step = {
  /** Days before now. */
  readonly day: number;
  readonly does: string;
  readonly image?: string;
  readonly with: Typed;
};
type Told = {
  readonly owner: string;
  readonly title: string;
  readonly family: Family;
  readonly steps: readonly Step[];
  readonly published: boolean;
};

const NAMES = "2f9c64e1-6a0b-4c11-9d53-0f4cdb6d7a10";
const DAY = 86_400_000;

/**
 * Lets the demo's people keep object files as anybody does: by the forms' rules and the use cases. A file whose owner
 * has one of its title is left alone.
 */
export async function keepDemoObjectFiles(wired: Live, folder: string): Promise<number> {
  const files = JSON.parse(
    await readFile(join(folder, "objects", "objects.json"), "utf8"),
  ) as readonly Told[];
  for (const told of files) await keep(wired, join(folder, "objects"), told);
  return files.length;
}

async function keep(wired: Live, folder: string, told: Told): Promise<void> {
  const member = (await wired.demoMembers.all()).find(({ name }) => name === told.owner);
  const account = member && (await wired.members.find(member.id));
  if (!account) throw new Error(`owner: must be one of the demo's members. Received "${told.owner}".`);
  const owner = actingAs(account);
  if ((await wired.objectFiles.list(owner.id, MOST_FILES)).some(({ title }) => title === told.title)) return;
  const then = (day: number) => ({
    ...wired,
    clock: { now: () => new Date(wired.clock.now().getTime() - day * DAY) },
  });
  const { title, family } = told;
  const opening = told.steps[0]?.day ?? 0;
  const id = passed(await openObjectFile(then(opening), owner, { title, family, description: "" }));
  for (const step of told.steps)
    await take(then(step.day), { id, by: owner, folder, step, typed: await typed(step, title, folder) });
  await refuseLooseStances(wired, id);
  if (told.published) passed(await openObjectToOthers(then(0), id, owner, { kind: "publish" }));
}

/** What is weighed must be an anomaly that the file has. */
async function refuseLooseStances(wired: Live, id: string): Promise<void> {
  const content = (await wired.objectFiles.find(id))?.content;
  if (!content) return;
  const keys = anomaliesOf(content, await matchedEntries(wired, content)).map(({ key }) => key);
  const loose = content.stances.find(({ anomaly }) => !keys.includes(anomaly));
  if (loose) throw new Error(`anomaly: must be one of ${keys.join(", ")}. Received "${loose.anomaly}".`);
}

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  readonly folder: string;
  readonly step: Step;
  readonly typed: Typed;
};

async function take(wired: Live, { id, by, folder, step, typed }: Asked): Promise<void> {
  const had = (await wired.objectFiles.find(id))?.version ?? 0;
  if (step.does === "match") return accept(wired, { id, by, had, typed });
  const bytes = step.image ? await readFile(join(folder, `${step.image}.webp`)) : null;
  const image = bytes && passed(await keepObjectImage(wired, { id, member: by.id, bytes }));
  const measured = image
    ? { sha256: image.sha256, width: String(image.width), height: String(image.height) }
    : {};
  const stamp = { by: { id: by.id, name: by.name }, at: wired.clock.now().toISOString() };
  const command = passed(readCommand(step.does, { ...typed, ...measured }, stamp));
  const version = passed(await changeObjectFile(wired, { id, by, had, command }));
  const next = image && photographOf(command, image, v5(`photograph of ${typed.id}`, NAMES));
  if (next) passed(await changeObjectFile(wired, { id, by, had: version, command: next }));
}

async function accept(
  wired: Live,
  { id, by, had, typed }: { id: string; by: ActingMember; had: number; typed: Typed },
): Promise<void> {
  const { mark = "", entry = "" } = typed;
  const { lookUpDays: days } = wired.environment;
  const lookUp = (photographs: Parameters<typeof lookUpMark>[1]["photographs"]) =>
    lookUpMark(
      { ...wired, clock: { now: () => new Date() } },
      { photographs, ownerHash: v5(id, NAMES), days },
    );
  const found = passed(await lookUpObjectMark({ ...wired, lookUp }, { id, member: by.id, mark }));
  const show = (each: string) => showLookUp(wired, each);
  const choose = (lookUp: string) => acceptMatch({ ...wired, show }, { id, by, had, mark, entry, lookUp });
  const accepted = await choose(found.id);
  // Another model than the shipped one may not find it; then it is chosen by hand.
  const isMissed = !accepted.ok && accepted.error.some(({ rule }) => rule === "object-not-in-look-up");
  passed(isMissed ? await choose("") : accepted);
}

/** What a step types: `@name` stands for the id of that name, `@name.txt` for what the file of that name says. */
async function typed({ with: fields }: Step, title: string, folder: string): Promise<Typed> {
  const named = Object.entries(fields).map(async ([field, value = ""]) => {
    if (/^@[\w-]+\.txt$/.test(value))
      return [field, await readFile(join(folder, value.slice(1)), "utf8")] as const;
    return [
      field,
      value.replaceAll(/@([\w-]+)/g, (_, name: string) => v5(`${title}/${name}`, NAMES)),
    ] as const;
  });
  return Object.fromEntries(await Promise.all(named));
}

/** What a rule let pass; what it did not is a fault of the demo. */
function passed<T>(result: Result<T, FieldError | readonly FieldError[]>): T {
  if (result.ok) return result.value;
  throw new Error(
    `An object file of the demo was refused:\n${[result.error].flat().map(sentence).join("\n")}`,
  );
}
