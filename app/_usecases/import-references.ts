import type { FieldError } from "#core/field-error";
import { entryFromColumns } from "#core/import/entry-from-columns";
import type { FolderError, FolderRecord } from "#core/import/folder-record";
import { makerFromColumns } from "#core/import/maker-from-columns";
import { type PhotographRecord, photographFromColumns } from "#core/import/photograph-from-columns";
import { fingerprint } from "#core/photographs/fingerprint";
import { checkRegion, type Region, scaleRegion, wholeOf } from "#core/photographs/region";
import { fail, ok, type Result } from "#core/result";
import type { ReviewPolicy } from "#core/review/policy";
import type {
  Blobs,
  Clock,
  Embedder,
  Embedders,
  ImageReader,
  ImportFolder,
  Models,
  PhotographToRecord,
  ReadImage,
  RecordedCounts,
  References,
} from "./ports.ts";
import { describePhotograph, embeddersInUse } from "./recording/describe-photograph.ts";

type Needs = {
  readonly images: ImageReader;
  readonly blobs: Blobs;
  readonly embedders: Embedders;
  readonly models: Models;
  readonly references: References;
  readonly clock: Clock;
  /** By which the reviews go that an import begins. */
  readonly policy: ReviewPolicy;
};

export type ImportProgress = { readonly done: number; readonly of: number };

export type ImportOutcome = {
  readonly dryRun: boolean;
  /** What the folder holds. */
  readonly found: { readonly makers: number; readonly entries: number; readonly photographs: number };
  /** What was new or changed; all 0 in a dry run and when everything was there already. */
  readonly recorded: RecordedCounts;
};

type Placed<T> = { readonly at: FolderRecord; readonly value: T };

/**
 * Takes a folder of references in, whole or not at all: every record and every photograph is judged first, and all
 * errors are told together; then everything is recorded in one transaction. Taking the same folder in twice changes
 * nothing the second time.
 * @param by who imports, for the revisions
 */
export async function importReferences(
  needs: Needs,
  folder: ImportFolder,
  options: {
    readonly dryRun: boolean;
    readonly by: string;
    readonly onProgress?: (progress: ImportProgress) => void;
  },
): Promise<Result<ImportOutcome, readonly FolderError[]>> {
  const errors: FolderError[] = [...folder.errors];
  const makers = readAll(folder.makers, makerFromColumns, errors);
  const entries = readAll(folder.entries, entryFromColumns, errors);
  const photographs = readAll(folder.photographs, photographFromColumns, errors);
  refuseTwice(makers, (m) => m.slug, "key", errors);
  refuseTwice(entries, (e) => e.slug, "key", errors);
  await refuseUnknown(needs.references, { makers, entries, photographs }, errors);
  if (errors.length > 0) return fail(errors);

  const ready = await takePhotographs(needs, folder, photographs, options, errors);
  if (errors.length > 0) return fail(errors);
  const found = { makers: makers.length, entries: entries.length, photographs: photographs.length };
  if (options.dryRun)
    return ok({ dryRun: true, found, recorded: { makers: 0, entries: 0, revisions: 0, photographs: 0 } });
  const recorded = await needs.references.record({
    makers: makers.map((m) => m.value),
    entries: entries.map((e) => e.value),
    photographs: ready,
    by: options.by,
    at: needs.clock.now().toISOString(),
    policy: needs.policy,
  });
  if (recorded.ok) return ok({ dryRun: false, found, recorded: recorded.value });
  const { entry, ...refusal } = recorded.error;
  return fail([placed(whereOf(entry, entries, photographs), refusal)]);
}

function readAll<T>(
  records: readonly FolderRecord[],
  read: (columns: FolderRecord["columns"]) => Result<T, readonly FieldError[]>,
  errors: FolderError[],
): readonly Placed<T>[] {
  return records.flatMap((at) => {
    const result = read(at.columns);
    if (result.ok) return [{ at, value: result.value }];
    errors.push(...result.error.map((error) => placed(at, error)));
    return [];
  });
}

const placed = (at: FolderRecord, error: FieldError): FolderError => ({
  ...error,
  file: at.file,
  line: at.line,
});

/** The record that says something of an entry. */
function whereOf(
  entry: string,
  entries: readonly Placed<{ slug: string }>[],
  photographs: readonly Placed<PhotographRecord>[],
): FolderRecord {
  const found =
    entries.find(({ value }) => value.slug === entry) ??
    photographs.find(({ value }) => value.entry === entry);
  return found?.at ?? { file: "entries", line: 0, columns: {} };
}

function refuseTwice<T>(
  items: readonly Placed<T>[],
  keyOf: (value: T) => string,
  field: string,
  errors: FolderError[],
): void {
  const lines = new Map<string, number>();
  for (const { at, value } of items) {
    const key = keyOf(value);
    const first = lines.get(key);
    if (first !== undefined)
      errors.push(placed(at, { field, rule: "twice", received: key, params: { line: first } }));
    else lines.set(key, at.line);
  }
}

async function refuseUnknown(
  references: References,
  all: {
    readonly makers: readonly Placed<{ slug: string; follows: readonly string[] }>[];
    readonly entries: readonly Placed<{
      slug: string;
      content: { maker: string | null; relations: readonly { entry: string }[] };
    }>[];
    readonly photographs: readonly Placed<PhotographRecord>[];
  },
  errors: FolderError[],
): Promise<void> {
  const wantedMakers = [
    ...all.makers.flatMap(({ at, value }) => value.follows.map((key) => ({ at, field: "follows", key }))),
    ...all.entries.flatMap(({ at, value }) =>
      value.content.maker === null ? [] : [{ at, field: "maker", key: value.content.maker }],
    ),
  ];
  const wantedEntries = [
    ...all.entries.flatMap(({ at, value }) =>
      value.content.relations.map(({ entry }) => ({ at, field: "relations", key: entry })),
    ),
    ...all.photographs.map(({ at, value }) => ({ at, field: "entry", key: value.entry })),
  ];
  const makersHere = new Set(all.makers.map((m) => m.value.slug));
  const entriesHere = new Set(all.entries.map((e) => e.value.slug));
  const makersThere = await references.knownMakers(wantedMakers.map((w) => w.key));
  const entriesThere = await references.knownEntries(wantedEntries.map((w) => w.key));
  for (const { at, field, key } of wantedMakers)
    if (!makersHere.has(key) && !makersThere.has(key))
      errors.push(placed(at, { field, rule: "maker-unknown", received: key }));
  for (const { at, field, key } of wantedEntries)
    if (!entriesHere.has(key) && !entriesThere.has(key))
      errors.push(placed(at, { field, rule: "entry-unknown", received: key }));
}

/** While the network reads one photograph, the next are decoded. */
const AT_ONCE = 3;

async function takePhotographs(
  needs: Needs,
  folder: ImportFolder,
  photographs: readonly Placed<PhotographRecord>[],
  options: { readonly dryRun: boolean; readonly onProgress?: (progress: ImportProgress) => void },
  errors: FolderError[],
): Promise<readonly PhotographToRecord[]> {
  const known = await needs.references.knownPhotographs([...new Set(photographs.map((p) => p.value.entry))]);
  const embedders = options.dryRun ? [] : await embeddersInUse(needs);
  const ready: (PhotographToRecord | null)[] = photographs.map(() => null);
  const written: string[] = [];
  let next = 0;
  let done = 0;
  const work = async () => {
    for (let index = next++; index < photographs.length; index = next++) {
      const item = photographs[index];
      if (!item) break;
      const judged = await judge(needs, folder, item.value);
      if (!judged.ok) errors.push(placed(item.at, judged.error));
      else if (!options.dryRun && errors.length === 0) {
        const kept = await needs.blobs.put(judged.value.image.bytes);
        if (kept.isNew) written.push(kept.sha256);
        ready[index] = await take(embedders, item.value, judged.value, kept.sha256, known);
      }
      options.onProgress?.({ done: ++done, of: photographs.length });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  if (errors.length > 0) await Promise.all(written.map((sha256) => needs.blobs.remove(sha256)));
  return ready.filter((p) => p !== null);
}

type Judged = { readonly image: ReadImage; readonly region: Region };

async function judge(
  { images }: Needs,
  folder: ImportFolder,
  record: PhotographRecord,
): Promise<Result<Judged, FieldError>> {
  const bytes = await folder.photograph(record.file);
  if (bytes === null) return fail({ field: "file", rule: "file-missing", received: record.file });
  const read = await images.read(bytes, "reference");
  if (!read.ok)
    return fail({ ...read.error, field: "file", received: `${record.file}: ${read.error.received}` });
  const region = regionIn(read.value, record);
  return region.ok ? ok({ image: read.value, region: region.value }) : region;
}

async function take(
  embedders: readonly Embedder[],
  record: PhotographRecord,
  { image, region }: Judged,
  sha256: string,
  known: ReadonlySet<string>,
): Promise<PhotographToRecord> {
  const { entry, shows, licence, credit, impression } = record;
  const { width, height } = image;
  const pixelsPerMm =
    record.pixelsPerMm === null ? null : (record.pixelsPerMm * width) / image.original.width;
  const photograph = {
    entry,
    sha256,
    width,
    height,
    region,
    pixelsPerMm,
    shows,
    licence,
    credit,
    impression,
  };
  if (known.has(fingerprint(photograph))) return { ...photograph, vectors: null };
  return { ...photograph, vectors: await describePhotograph(embedders, image, region) };
}

/** The record's region, checked against the photograph and carried over to the size that is kept. */
function regionIn(image: ReadImage, { box, turn }: PhotographRecord): Result<Region, FieldError> {
  const whole = wholeOf(image.original);
  const region = box === null ? { ...whole, turn } : { ...box, turn };
  const checked = checkRegion(region, image.original);
  return checked.ok ? ok(scaleRegion(checked.value, image.width / image.original.width)) : checked;
}
