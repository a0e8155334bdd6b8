import type { FieldError } from "#core/field-error";
import { type AskedPhotograph, checkPhotographCount, numberMarks } from "#core/look-ups/asked-photographs";
import { type Knowledge, knowsSomething, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import type { Stage } from "#core/look-ups/look-up";
import { answeringModel } from "#core/models/decide-models";
import { checkRegion, type Region, scaleRegion, wholeOf } from "#core/photographs/region";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { fail, ok, type Result } from "#core/result";
import { type CombinedRank, combineSights, type Sight, unseen } from "#core/similarity/combine";
import { findingsOf } from "#core/similarity/findings";
import { type Candidate, comesNear, type Fused, fuse, noneOfFused } from "#core/similarity/fuse";
import { rankMakers } from "#core/similarity/makers-of-marks";
import { rankEntries } from "#core/similarity/rank";
import type {
  Blobs,
  Clock,
  Embedder,
  Embedders,
  Entries,
  ImageReader,
  KeptLookUp,
  KeptMaker,
  KeptMatch,
  LookUps,
  Models,
  Nearest,
  QueryVector,
  Randomness,
  ReadImage,
  Readings,
} from "./ports.ts";

type Needs = {
  readonly images: ImageReader;
  readonly blobs: Blobs;
  readonly embedders: Embedders;
  readonly models: Models;
  readonly nearest: Nearest;
  readonly readings: Readings;
  readonly entries: Entries;
  readonly lookUps: LookUps;
  readonly clock: Clock;
  readonly randomness: Randomness;
};

/** A photograph to look up. */
export type PhotographToLookUp = {
  readonly bytes: Uint8Array;
  /** In pixels of the upright image as it came; the whole image when null. */
  readonly region: Region | null;
  /** Photographs of one mark have the same number; which numbers does not matter. */
  readonly mark: number;
};

export type LookUpQuestion = {
  /** 1 to MOST_PHOTOGRAPHS. */
  readonly photographs: readonly PhotographToLookUp[];
  /** What is known besides the photographs, of the mark that the first one shows. */
  readonly known?: Knowledge;
  readonly ownerHash: string;
  /** How long the look-up is kept unless its owner keeps it. */
  readonly days: number;
  readonly onStage?: (stage: Stage) => void;
};

/** Entries in an answer. */
const ENTRIES = 24;
/** Entries whose place in the answer is weighed when something is known besides the photograph. */
const WEIGHED = 200;
/** Entries taken from those that the letters find. */
const READ = 60;
/** Nearest photographs asked for each turn of the query. */
const NEIGHBOURS = 60;
/** Makers in an answer. */
const MAKERS = 5;
const DAY = 24 * 60 * 60 * 1000;

type Read = { readonly image: ReadImage; readonly region: Region; readonly mark: number };
/** A photograph as the model sees it, with its place among those asked with, from 1. */
type Described = { readonly photograph: number; readonly vectors: readonly QueryVector[] };
type MarkAsked = {
  readonly mark: number;
  readonly known: Knowledge;
  readonly photographs: readonly Described[];
};
type RankedMark = MarkAsked & {
  readonly fused: readonly Fused[];
  readonly seen: ReadonlyMap<string, CombinedRank["seen"]>;
};

/**
 * Looks up the marks on an object: reads the photographs, embeds the region of each in all turns, finds the nearest
 * photographs, ranks the entries for each mark by all photographs of it together, weighs in what is known besides,
 * finds the makers that use several of the marks, and keeps the answer with the version of the model that gave it.
 */
export async function lookUpMark(
  needs: Needs,
  question: LookUpQuestion,
): Promise<Result<KeptLookUp, FieldError>> {
  const { nearest, lookUps, clock, randomness } = needs;
  const stage = question.onStage ?? (() => undefined);
  stage("received");
  const begun = performance.now();
  const read = await readPhotographs(needs, question.photographs);
  if (!read.ok) return read;
  const decode = performance.now() - begun;
  stage("decoded");

  const chosen = await chooseModel(needs);
  if (!chosen.ok) return chosen;
  const embedder = chosen.value;
  const described: (Described & { readonly mark: number })[] = [];
  const timings = { decode, preprocess: 0, embed: 0, search: 0 };
  for (const [i, { image, region, mark }] of read.value.entries()) {
    const { vectors, preprocessMs, embedMs } = await embedder.embedQuery(image.bytes, region);
    described.push({ photograph: i + 1, vectors, mark });
    timings.preprocess += preprocessMs;
    timings.embed += embedMs;
  }
  stage("embedded");

  const searching = performance.now();
  const known = question.known ?? NOTHING_KNOWN;
  const searched = await nearest.count(embedder.model);
  const marks: RankedMark[] = [];
  for (const mark of new Set(described.map((each) => each.mark))) {
    const photographs = described.filter((each) => each.mark === mark);
    const asked = { mark, photographs, known: mark === 1 ? known : NOTHING_KNOWN };
    marks.push(await rankMark(needs, embedder, asked));
  }
  const makers = marks.length > 1 ? await findMakers(needs, embedder, marks) : [];
  timings.search = performance.now() - searching;
  stage("searched");

  const [first, ...others] = marks.map((ranked) => {
    const fused = ranked.fused.slice(0, ENTRIES);
    const matches = fused.map((each) => toMatch(each, ranked));
    return { mark: ranked.mark, noneFits: noneOfFused(fused, embedder.likeness), matches };
  });
  const now = clock.now();
  const lookUp: KeptLookUp = {
    id: randomness.token(),
    ownerHash: question.ownerHash,
    photographs: await keepImages(needs, read.value),
    asked: known,
    model: embedder.model,
    noneFits: first?.noneFits ?? true,
    searched,
    matches: first?.matches ?? [],
    otherMarks: others,
    makers,
    timings,
    createdAt: now,
    expiresAt: new Date(now.getTime() + question.days * DAY),
  };
  await lookUps.save(lookUp);
  return ok(lookUp);
}

/**
 * The model that answers look-ups now. While a new one is filled the old one answers, if its files are still here.
 * @returns as the error, that the reference is being prepared for the model in place, and how far that has come
 */
export async function chooseModel({
  embedders,
  models,
}: Pick<Needs, "embedders" | "models">): Promise<Result<Embedder, FieldError>> {
  const { model } = embedders.inPlace;
  const embedder = await embedders.find(answeringModel(await models.all(), model));
  if (embedder) return ok(embedder);
  const { done, of } = await models.coverage(model);
  return fail({ field: "request", rule: "preparing", received: model, params: { done, of } });
}

/** Reads every photograph and its region; an error says which of several it is about. */
async function readPhotographs(
  { images }: Needs,
  photographs: readonly PhotographToLookUp[],
): Promise<Result<readonly Read[], FieldError>> {
  const count = checkPhotographCount(photographs.length);
  if (!count.ok) return count;
  const read: Read[] = [];
  for (const [i, { bytes, region, mark }] of numberMarks(photographs).entries()) {
    const refuse = (error: FieldError) =>
      fail(
        photographs.length === 1
          ? error
          : {
              ...error,
              received: `photograph ${i + 1}: ${error.received}`,
              params: { ...error.params, photograph: i + 1 },
            },
      );
    const image = await images.read(bytes, "look-up");
    if (!image.ok) return refuse(image.error);
    const { width, original } = image.value;
    const asked = checkRegion(region ?? wholeOf(original), original);
    if (!asked.ok) return refuse(asked.error);
    read.push({ image: image.value, region: scaleRegion(asked.value, width / original.width), mark });
  }
  return ok(read);
}

async function keepImages({ blobs }: Needs, read: readonly Read[]): Promise<readonly AskedPhotograph[]> {
  const kept: AskedPhotograph[] = [];
  for (const { image, region, mark } of read) {
    const { sha256 } = await blobs.put(image.bytes);
    kept.push({ sha256, width: image.width, height: image.height, region, mark });
  }
  return kept;
}

/** Ranks the entries for one mark: those its photographs find, and those that only the letters find. */
async function rankMark(needs: Needs, embedder: Embedder, asked: MarkAsked): Promise<RankedMark> {
  const near = await findNear(needs, embedder, asked);
  const letters = parseLegibleLetters(asked.known.letters);
  const read = letters.ok && letters.value ? await needs.readings.find(letters.value, READ) : [];
  const only = read.filter((entry) => !near.some((ranked) => ranked.entry === entry));
  const far = await measureFar(needs, embedder, asked, only);
  return weigh(needs, embedder, asked, near, only, far);
}

/**
 * Entries by all photographs of a mark. What one photograph finds and another does not is measured for that other one
 * too, however far away it is.
 */
async function findNear(
  { nearest }: Needs,
  { model }: Embedder,
  { photographs }: MarkAsked,
): Promise<readonly CombinedRank[]> {
  const sights: Sight[] = [];
  for (const { photograph, vectors } of photographs)
    sights.push({
      photograph,
      ranked: rankEntries(await nearest.search(model, vectors, NEIGHBOURS), WEIGHED),
    });
  const lacking = unseen(sights);
  for (const { photograph, vectors } of photographs) {
    const entries = lacking.get(photograph) ?? [];
    if (entries.length === 0) continue;
    const ranked = rankEntries(await nearest.among(model, vectors, entries), entries.length);
    // These photographs of the entry were measured, but they are not among the nearest.
    sights.push({ photograph, ranked: ranked.map((each) => ({ ...each, hits: 0 })) });
  }
  return combineSights(sights, WEIGHED);
}

/** Measures entries that no photograph found. */
async function measureFar(
  { nearest }: Needs,
  { model }: Embedder,
  { photographs }: MarkAsked,
  entries: readonly string[],
): Promise<readonly CombinedRank[]> {
  if (entries.length === 0) return [];
  const sights: Sight[] = [];
  for (const { photograph, vectors } of photographs)
    sights.push({
      photograph,
      ranked: rankEntries(await nearest.among(model, vectors, entries), entries.length),
    });
  return combineSights(sights, entries.length);
}

/**
 * Gives entries their places, with what is known besides weighed in.
 * @param others entries beside the near ones; those without a photograph are in no ranking
 */
async function weigh(
  { readings }: Needs,
  embedder: Embedder,
  asked: MarkAsked,
  near: readonly CombinedRank[],
  others: readonly string[],
  far: readonly CombinedRank[],
): Promise<RankedMark> {
  const ranks = new Map([...near, ...far].map((ranked) => [ranked.entry, ranked]));
  const entries = [...near.map(({ entry }) => entry), ...others];
  const facts = knowsSomething(asked.known) ? await readings.facts(entries) : new Map();
  const listed = new Set(near.slice(0, ENTRIES).map(({ entry }) => entry));
  const candidates = entries.map((entry): Candidate => {
    const recorded = facts.get(entry);
    const findings = recorded ? findingsOf(asked.known, recorded) : [];
    const spelt = findings.some(({ aspect, stands }) => aspect === "letters" && stands === "for");
    const foundBy = spelt && !listed.has(entry) ? "letters" : "photograph";
    return { entry, ranked: ranks.get(entry) ?? null, foundBy, findings };
  });
  return {
    ...asked,
    fused: fuse(candidates, embedder.likeness, candidates.length),
    seen: new Map([...ranks].map(([entry, { seen }]) => [entry, seen])),
  };
}

/** Makers of whom several entries come near several marks; each of their entries is measured for every mark. */
async function findMakers(
  needs: Needs,
  embedder: Embedder,
  marks: readonly RankedMark[],
): Promise<readonly KeptMaker[]> {
  const listed = marks.flatMap(({ fused }) => fused.slice(0, ENTRIES).map(({ entry }) => entry));
  const makerOf = await needs.entries.ofMakers(listed);
  const measured: RankedMark[] = [];
  for (const ranked of marks) {
    const own = ranked.fused.filter(({ entry }) => makerOf.has(entry));
    const others = [...makerOf.keys()].filter((entry) => !own.some((each) => each.entry === entry));
    const far = await measureFar(needs, embedder, ranked, others);
    const rest = await weigh(needs, embedder, ranked, [], others, far);
    measured.push({ ...rest, fused: [...own, ...rest.fused], seen: new Map([...ranked.seen, ...rest.seen]) });
  }
  const entries = measured.flatMap(({ mark, fused }) =>
    fused.flatMap((each) => {
      const maker = makerOf.get(each.entry);
      if (maker === undefined) return [];
      const { entry, score } = each;
      return [{ maker, mark, entry, score, comesNear: comesNear(each, embedder.likeness) }];
    }),
  );
  return rankMakers(entries, marks.length, MAKERS).map(({ maker, answers }) => ({
    maker,
    answers: answers.flatMap(({ mark, entry }) => {
      const ranked = measured.find((each) => each.mark === mark);
      const fused = ranked?.fused.find((each) => each.entry === entry);
      return ranked && fused ? [{ mark, match: toMatch(fused, ranked) }] : [];
    }),
  }));
}

function toMatch({ entry, ranked, foundBy, findings }: Fused, { seen }: RankedMark): KeptMatch {
  const hit = ranked?.best ?? null;
  return { entry, hit, photographsNear: ranked?.hits ?? 0, foundBy, findings, seen: seen.get(entry) ?? [] };
}
