import { FIELDS, KINDS, MAKER_PARTS, TECHNIQUES } from "#core/entries/vocabulary";
import { checkRegion } from "#core/photographs/region";
import { type EntryRow, type MakerRow, type PhotographRow, splitList, type TryRow } from "./scenario/demo.ts";

export interface Demo {
  makers: readonly MakerRow[];
  entries: readonly EntryRow[];
  photographs: readonly PhotographRow[];
  tries: readonly TryRow[];
  /** Pixels of each picture that is there, by the path beside the tables (`photographs/…`, `try/…`). */
  pictures: ReadonlyMap<string, { width: number; height: number }>;
}

// The tables hold texts; they are checked against the words of the domain.
const kinds: readonly string[] = KINDS;
const fields: readonly string[] = FIELDS;
const parts: readonly string[] = MAKER_PARTS;
const techniques: readonly string[] = TECHNIQUES;

/** First and last year of an interval such as `1781~/1843`; an open end is read as 9999. */
export function yearsOf(interval: string): { first: number; last: number } | undefined {
  const match = /^(\d{4})[~?%]?\/(?:(\d{4})[~?%]?|\.\.)$/.exec(interval);
  if (!match) return undefined;
  return { first: Number(match[1]), last: match[2] === undefined ? 9999 : Number(match[2]) };
}

function checkMakers(demo: Demo, makers: ReadonlyMap<string, MakerRow>): string[] {
  const found: string[] = [];
  for (const maker of demo.makers) {
    const years = yearsOf(maker.active);
    if (!years || years.first > years.last)
      found.push(`maker ${maker.key}: active must be an interval of years. Received "${maker.active}".`);
    if (splitList(maker.sources).length === 0)
      found.push(`maker ${maker.key}: sources must name at least one.`);
    for (const key of splitList(maker.follows)) {
      const before = yearsOf(makers.get(key)?.active ?? "");
      if (!before) found.push(`maker ${maker.key}: follows must name a maker. Received "${key}".`);
      else if (years && Math.abs(years.first - before.last) > 1)
        found.push(
          `maker ${maker.key}: must begin when ${key} ends. Received ${years.first} after ${before.last}.`,
        );
    }
    if ((maker.follows === "") !== (maker.follows_how === ""))
      found.push(`maker ${maker.key}: follows and follows_how must be given together.`);
  }
  return found;
}

function checkEntry(
  entry: EntryRow,
  makers: ReadonlyMap<string, MakerRow>,
  entries: ReadonlyMap<string, EntryRow>,
): string[] {
  const found: string[] = [];
  const say = (text: string): void => void found.push(`entry ${entry.key}: ${text}`);
  if (!kinds.includes(entry.kind)) say(`kind must be one of ${kinds.join(", ")}. Received "${entry.kind}".`);
  if (!fields.includes(entry.field))
    say(`field must be one of ${fields.join(", ")}. Received "${entry.field}".`);
  if (!parts.includes(entry.maker_part))
    say(`maker_part must be one of ${parts.join(", ")}. Received "${entry.maker_part}".`);
  if (!techniques.includes(entry.technique))
    say(`technique must be one of ${techniques.join(", ")}. Received "${entry.technique}".`);
  if (!/^\d+(\.\d+)? x \d+(\.\d+)?$/.test(entry.size_mm))
    say(`size_mm must be "width x height". Received "${entry.size_mm}".`);
  for (const name of [
    "title",
    "description",
    "place_on_object",
    "period_from_reason",
    "period_to_reason",
    "material",
  ] as const)
    if (entry[name] === "") say(`${name} must be given.`);
  if (entry.sources === "" && entry.citations === "") say("sources or citations must be given.");
  if (entry.kind !== "construction detail" && entry.words === "" && entry.emblem === "")
    say("words or emblem must be given.");
  const period = yearsOf(entry.period);
  if (!period || period.first > period.last) {
    say(`period must be an interval of years. Received "${entry.period}".`);
    return found;
  }
  if (entry.maker !== "") {
    const active = yearsOf(makers.get(entry.maker)?.active ?? "");
    if (!active) say(`maker must be a maker of the demo. Received "${entry.maker}".`);
    else if (
      entry.kind !== "construction detail" &&
      entry.maker_part === "made" &&
      (period.first < active.first || period.last > active.last) &&
      !sharedPunch(entry, makers)
    )
      say(
        `period must lie within ${entry.maker}, ${active.first} to ${active.last}. Received "${entry.period}".`,
      );
  }
  for (const name of ["preceded_by", "followed_by", "variant_of", "imitated_by"] as const) {
    for (const key of splitList(entry[name])) {
      const other = entries.get(key);
      if (!other || key === entry.key) say(`${name} must name another entry. Received "${key}".`);
      else if (name === "preceded_by") {
        const before = yearsOf(other.period);
        if (before && Math.abs(period.first - before.last) > 2)
          say(`must begin when ${key} ends. Received ${period.first} after ${before.last}.`);
        if (!splitList(other.followed_by).includes(entry.key)) say(`${key} must name it in followed_by.`);
      }
    }
  }
  return found;
}

/** A punch may pass to the firm that follows: then the successor's years count too. */
function sharedPunch(entry: EntryRow, makers: ReadonlyMap<string, MakerRow>): boolean {
  const period = yearsOf(entry.period);
  const own = yearsOf(makers.get(entry.maker)?.active ?? "");
  if (!period || !own || period.first < own.first) return false;
  const heirs = [...makers.values()].filter((maker) => splitList(maker.follows).includes(entry.maker));
  return heirs.some((heir) => (yearsOf(heir.active)?.last ?? 0) >= period.last);
}

function checkPhotograph(row: PhotographRow, demo: Demo, entries: ReadonlyMap<string, EntryRow>): string[] {
  const picture = demo.pictures.get(row.file);
  if (!picture) return [`photograph ${row.file}: the file must be there.`];
  const found: string[] = [];
  const entry = entries.get(row.entry);
  if (!entry)
    found.push(`photograph ${row.file}: entry must be an entry of the demo. Received "${row.entry}".`);
  const [x = -1, y = -1, width = 0, height = 0] = row.region.split(",").map(Number);
  const turn = Number(row.turn);
  if (!(turn >= 0 && turn < 360))
    found.push(`photograph ${row.file}: turn must be 0 to 360. Received "${row.turn}".`);
  const inside = checkRegion({ x, y, width, height, turn }, picture);
  if (!inside.ok)
    found.push(
      `photograph ${row.file}: region must lie within ${picture.width} x ${picture.height}. Received "${row.region}".`,
    );
  const [wide = 0, tall = 0] = (entry?.size_mm ?? "").split(" x ").map(Number);
  const shown = Math.hypot(width, height) / Number(row.pixels_per_mm);
  const real = Math.hypot(wide, tall);
  if (entry && !(shown > real * 0.75 && shown < real * 1.5))
    found.push(
      `photograph ${row.file}: region at its scale must be about ${real.toFixed(0)} mm across. Received ${shown.toFixed(0)} mm.`,
    );
  // What tilt and the rounding to pixels may do to a mark's proportions; a box drawn about it unturned does more.
  const proportion = (width / height) * (tall / wide);
  if (entry && !(proportion > 0.68 && proportion < 1.47))
    found.push(
      `photograph ${row.file}: region must have about the proportions of the mark, ${row.region} for ${entry.size_mm}.`,
    );
  return found;
}

function repeated(keys: readonly string[], what: string): string[] {
  return keys
    .filter((key, i) => keys.indexOf(key) !== i)
    .map((key) => `${what} ${key}: key must occur once.`);
}

/** Everything in the demo that contradicts something else in it, in words; empty when all agrees. */
export function checkDemo(demo: Demo): string[] {
  const makers = new Map(demo.makers.map((maker) => [maker.key, maker]));
  const entries = new Map(demo.entries.map((entry) => [entry.key, entry]));
  const counts = new Map<string, number>();
  for (const row of demo.photographs) counts.set(row.entry, (counts.get(row.entry) ?? 0) + 1);
  return [
    ...repeated(
      demo.makers.map((maker) => maker.key),
      "maker",
    ),
    ...repeated(
      demo.entries.map((entry) => entry.key),
      "entry",
    ),
    ...repeated(
      demo.photographs.map((row) => row.file),
      "photograph",
    ),
    ...checkMakers(demo, makers),
    ...demo.entries.flatMap((entry) => checkEntry(entry, makers, entries)),
    ...demo.entries
      .filter((entry) => (counts.get(entry.key) ?? 0) < 3)
      .map(
        (entry) =>
          `entry ${entry.key}: must have at least 3 photographs. Received ${counts.get(entry.key) ?? 0}.`,
      ),
    ...demo.makers
      .filter((maker) => !demo.entries.some((entry) => entry.maker === maker.key))
      .map((maker) => `maker ${maker.key}: must have an entry.`),
    ...demo.photographs.flatMap((row) => checkPhotograph(row, demo, entries)),
    ...demo.tries
      .filter((row) => !demo.pictures.has(`try/${row.file}`))
      .map((row) => `try ${row.file}: the file must be there.`),
    ...demo.tries
      .filter((row) => row.entry !== "" && !entries.has(row.entry))
      .map((row) => `try ${row.file}: entry must be an entry of the demo. Received "${row.entry}".`),
  ];
}
