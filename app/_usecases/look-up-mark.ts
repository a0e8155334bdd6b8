import type { FieldError } from "#core/field-error";
import { type Frame, framesOf, nearestFrame } from "#core/look-ups/frames";
import { type Knowledge, knowsSomething, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import type { Stage } from "#core/look-ups/look-up";
import { answeringModel } from "#core/models/decide-models";
import { checkRegion, type Region, scaleRegion } from "#core/photographs/region";
import { parseLegibleLetters } from "#core/reading/legible-letters";
import { fail, ok, type Result } from "#core/result";
import { findingsOf } from "#core/similarity/findings";
import { type Candidate, fuse, noneOfFused } from "#core/similarity/fuse";
import { type Hit, rankEntries } from "#core/similarity/rank";
import type {
  Blobs,
  Clock,
  Embedder,
  Embedders,
  ImageReader,
  KeptLookUp,
  LookUps,
  MarkFinder,
  Models,
  Nearest,
  QueryVector,
  Randomness,
  Readings,
} from "./ports.ts";

type Needs = {
  readonly images: ImageReader;
  readonly marks: MarkFinder;
  readonly blobs: Blobs;
  readonly embedders: Embedders;
  readonly models: Models;
  readonly nearest: Nearest;
  readonly readings: Readings;
  readonly lookUps: LookUps;
  readonly clock: Clock;
  readonly randomness: Randomness;
};

export type LookUpQuestion = {
  readonly bytes: Uint8Array;
  /** In pixels of the upright image as it came; when left out, all of it and the place where the mark is found to be. */
  readonly region: Region | null;
  /** What is known besides the photograph. */
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
const DAY = 24 * 60 * 60 * 1000;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Looks a mark up: reads the photograph, embeds its region in all turns, finds the nearest photographs, ranks the
 * entries they belong to, weighs in what is known besides, and keeps the answer with the version of the model that
 * gave it.
 */
export async function lookUpMark(
  needs: Needs,
  question: LookUpQuestion,
): Promise<Result<KeptLookUp, FieldError>> {
  const { images, blobs, nearest, lookUps, clock, randomness } = needs;
  const stage = question.onStage ?? (() => undefined);
  stage("received");
  const begun = performance.now();
  const read = await images.read(question.bytes, "look-up");
  if (!read.ok) return read;
  const image = read.value;
  const asked = question.region ? checkRegion(question.region, image.original) : null;
  if (asked && !asked.ok) return asked;
  const drawn = asked && scaleRegion(asked.value, image.width / image.original.width);
  const frames = framesOf(image, drawn, drawn ? [] : await needs.marks.find(image.bytes));
  const decode = performance.now() - begun;
  stage("decoded");

  const chosen = await chooseModel(needs);
  if (!chosen.ok) return chosen;
  const embedder = chosen.value;
  const embedded: EmbeddedFrame[] = [];
  for (const frame of frames)
    embedded.push({ ...frame, ...(await embedder.embedQuery(image.bytes, frame.region)) });
  stage("embedded");

  const searching = performance.now();
  const [frame, searched] = await Promise.all([
    searchFrames(nearest, embedder.model, embedded),
    nearest.count(embedder.model),
  ]);
  const known = question.known ?? NOTHING_KNOWN;
  const fused = fuse(
    await findCandidates(needs, embedder, frame.vectors, frame.hits, known),
    embedder.likeness,
    ENTRIES,
  );
  const search = performance.now() - searching;
  stage("searched");

  const now = clock.now();
  const { sha256 } = await blobs.put(image.bytes);
  const lookUp: KeptLookUp = {
    id: randomness.token(),
    ownerHash: question.ownerHash,
    sha256,
    width: image.width,
    height: image.height,
    region: frame.region,
    framedBy: frame.framedBy,
    asked: known,
    model: embedder.model,
    noneFits: noneOfFused(fused, embedder.likeness),
    searched,
    matches: fused.map(({ entry, ranked, foundBy, findings }) => ({
      entry,
      hit: ranked?.best ?? null,
      photographsNear: ranked?.hits ?? 0,
      foundBy,
      findings,
    })),
    timings: {
      decode,
      preprocess: sum(embedded.map(({ preprocessMs }) => preprocessMs)),
      embed: sum(embedded.map(({ embedMs }) => embedMs)),
      search,
    },
    createdAt: now,
    expiresAt: new Date(now.getTime() + question.days * DAY),
  };
  await lookUps.save(lookUp);
  return ok(lookUp);
}

type EmbeddedFrame = Frame & Awaited<ReturnType<Embedder["embedQuery"]>>;

/** Searches by every frame and keeps to the one that finds the nearest photograph. */
async function searchFrames(nearest: Nearest, model: string, frames: readonly EmbeddedFrame[]) {
  const [first, ...rest] = await Promise.all(
    frames.map(async (frame) => ({ ...frame, hits: await nearest.search(model, frame.vectors, NEIGHBOURS) })),
  );
  if (!first) throw new Error("A look-up must have a frame.");
  return nearestFrame([first, ...rest]);
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

/** Entries that the photograph finds and those that only the letters find, each with what speaks for and against it. */
async function findCandidates(
  { nearest, readings }: Needs,
  { model }: Embedder,
  vectors: readonly QueryVector[],
  hits: readonly Hit[],
  known: Knowledge,
): Promise<readonly Candidate[]> {
  const near = rankEntries(hits, WEIGHED);
  const photographed = near.map(
    (ranked): Candidate => ({ entry: ranked.entry, ranked, foundBy: "photograph", findings: [] }),
  );
  if (!knowsSomething(known)) return photographed;
  const letters = parseLegibleLetters(known.letters);
  const read = letters.ok && letters.value ? await readings.find(letters.value, READ) : [];
  const only = read.filter((entry) => !near.some((ranked) => ranked.entry === entry));
  const [far, facts] = await Promise.all([
    only.length > 0 ? nearest.among(model, vectors, only) : [],
    readings.facts([...near.map(({ entry }) => entry), ...only]),
  ]);
  const ranks = new Map(rankEntries(far, only.length).map((ranked) => [ranked.entry, ranked]));
  const listed = new Set(near.slice(0, ENTRIES).map(({ entry }) => entry));
  return [...near.map(({ entry }) => entry), ...only].map((entry): Candidate => {
    const recorded = facts.get(entry);
    const findings = recorded ? findingsOf(known, recorded) : [];
    const spelt = findings.some(({ aspect, stands }) => aspect === "letters" && stands === "for");
    const ranked = near.find((each) => each.entry === entry) ?? ranks.get(entry) ?? null;
    return { entry, ranked, foundBy: spelt && !listed.has(entry) ? "letters" : "photograph", findings };
  });
}
