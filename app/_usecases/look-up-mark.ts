import type { FieldError } from "#core/field-error";
import type { AskedPhotograph } from "#core/look-ups/asked-photographs";
import type { Frame } from "#core/look-ups/frames";
import type { KeptLookUp } from "#core/look-ups/kept-look-up";
import { type Knowledge, NOTHING_KNOWN } from "#core/look-ups/knowledge";
import type { Stage } from "#core/look-ups/look-up";
import { answeringModel } from "#core/models/decide-models";
import { fail, ok, type Result } from "#core/result";
import { noneOfFused } from "#core/similarity/fuse";
import { noneIsLikeliest } from "#core/similarity/sureness";
import { describeFrame } from "./look-up/describe-frame.ts";
import { findMakers } from "./look-up/find-makers.ts";
import { type Described, ENTRIES, type RankedMark, rankMark, toMatch } from "./look-up/rank-mark.ts";
import { type PhotographToLookUp, readPhotographs } from "./look-up/read-photographs.ts";
import type {
  Blobs,
  Clock,
  Embedder,
  Embedders,
  Entries,
  ImageReader,
  LookUps,
  MarkFinder,
  Models,
  Nearest,
  Randomness,
  ReadImage,
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
  readonly entries: Entries;
  readonly lookUps: LookUps;
  readonly clock: Clock;
  readonly randomness: Randomness;
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

const DAY = 24 * 60 * 60 * 1000;

/** A photograph with the part of it that was looked up. */
type Framed = Frame & { readonly image: ReadImage; readonly mark: number };

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
  const read = await readPhotographs(needs.images, question.photographs);
  if (!read.ok) return read;
  const decode = performance.now() - begun;
  stage("decoded");

  const chosen = await chooseModel(needs);
  if (!chosen.ok) return chosen;
  const embedder = chosen.value;
  const described: (Described & { readonly mark: number })[] = [];
  const asked: Framed[] = [];
  const timings = { decode, preprocess: 0, embed: 0, search: 0 };
  for (const [i, { image, region, mark }] of read.value.entries()) {
    const frame = await describeFrame(needs, embedder, image, region);
    const { vectors, hits, tries } = frame;
    described.push({ photograph: i + 1, vectors, hits, tries, mark });
    asked.push({ image, mark, region: frame.region, framedBy: frame.framedBy });
    timings.preprocess += frame.preprocessMs;
    timings.embed += frame.embedMs;
  }
  stage("embedded");

  const searching = performance.now();
  const known = question.known ?? NOTHING_KNOWN;
  const searched = await nearest.count(embedder.model);
  const marks: RankedMark[] = [];
  for (const mark of new Set(described.map((each) => each.mark))) {
    const photographs = described.filter((each) => each.mark === mark);
    const of = { mark, photographs, known: mark === 1 ? known : NOTHING_KNOWN };
    marks.push(await rankMark(needs, embedder, of));
  }
  const makers = marks.length > 1 ? await findMakers(needs, embedder, marks) : [];
  timings.search = performance.now() - searching;
  stage("searched");

  const [first, ...others] = marks.map((ranked) => {
    const fused = ranked.fused.slice(0, ENTRIES);
    const matches = fused.map((each) => toMatch(each, ranked));
    const { mark, chances } = ranked;
    const noneFits = chances
      ? noneIsLikeliest(chances.none, chances.of.values())
      : noneOfFused(fused, embedder.likeness);
    return { mark, noneFits, noneProbability: chances?.none ?? null, matches };
  });
  const now = clock.now();
  const lookUp: KeptLookUp = {
    id: randomness.token(),
    ownerHash: question.ownerHash,
    photographs: await keepImages(needs, asked),
    asked: known,
    model: embedder.model,
    noneFits: first?.noneFits ?? true,
    noneProbability: first?.noneProbability ?? null,
    calibrated: first?.noneProbability == null ? null : (embedder.calibration?.date ?? null),
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

async function keepImages({ blobs }: Needs, asked: readonly Framed[]): Promise<readonly AskedPhotograph[]> {
  const kept: AskedPhotograph[] = [];
  for (const { image, ...frame } of asked) {
    const { sha256 } = await blobs.put(image.bytes);
    kept.push({ sha256, width: image.width, height: image.height, ...frame });
  }
  return kept;
}
