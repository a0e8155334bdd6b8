import { InferenceSession, Tensor } from "onnxruntime-node";
import { type ModelFacts, modelFolder, readModelFacts, readNetwork } from "./model.ts";
import { type Patch, prepare } from "./preprocess.ts";
import { quarterTurn } from "./square.ts";

/** A query turned by so many degrees clockwise, and its vector: unit length, so that a dot product is a cosine. */
export type TurnedVector = { readonly turn: number; readonly vector: Float32Array };

/** A prepared picture of a query turned by so many degrees clockwise. */
export type Turned = { readonly turn: number; readonly picture: Float32Array };

type Network = { readonly facts: ModelFacts; readonly session: InferenceSession };

/** More pictures at once are no faster and take memory. */
const LARGEST_BATCH = 16;

// Kept on the global object: a bundler may give each route its own copy of this module, and the network
// with its working memory takes about 100 MB.
const held = globalThis as typeof globalThis & { countermarkNetworks?: Map<string, Promise<Network>> };

/**
 * The facts of a model; loads and verifies it the first time.
 * @param folder where it lies, here and in the functions below; the model in place when left out
 */
export async function modelFacts(folder?: string): Promise<ModelFacts> {
  return (await network(folder)).facts;
}

/** Gives a network's memory back; it is loaded anew when it is asked again. */
export async function unloadModel(folder: string): Promise<void> {
  const loaded = held.countermarkNetworks?.get(folder);
  held.countermarkNetworks?.delete(folder);
  await (await loaded)?.session.release();
}

/**
 * Vectors of prepared pictures, in the same order; a picture's vector does not depend on its neighbours.
 * @param batch pictures of side * side numbers, as ml/preprocess.ts makes them
 * @throws Error when the model cannot be loaded or a picture has another size
 */
export async function embed(batch: readonly Float32Array[], folder?: string): Promise<Float32Array[]> {
  const { facts, session } = await network(folder);
  const vectors: Float32Array[] = [];
  for (let start = 0; start < batch.length; start += LARGEST_BATCH)
    vectors.push(...(await run(session, facts, batch.slice(start, start + LARGEST_BATCH))));
  return vectors;
}

/** The vector of a reference photograph's region, as it stands. */
export async function embedReference(patch: Patch, folder?: string): Promise<Float32Array> {
  const { facts } = await network(folder);
  const [vector] = await embed([prepare(patch, 0, facts.side)], folder);
  if (!vector) throw new Error("The network gave no vector for one picture.");
  return vector;
}

/**
 * A query's region turned in equal steps all the way round: turn k is k * 360 / turns degrees clockwise.
 * Each is cut from the photograph anew, so that the corners of a turned square show what is there; only
 * quarter turns are made from one another, which gives the same numbers four times as fast.
 * @param side pixels of a side; the model's own when left out
 */
export function turnsOf(patch: Patch, turns: number, side?: number): Turned[] {
  if (!Number.isInteger(turns) || turns < 1)
    throw new Error(`turns: must be a whole number above 0. Received ${turns}.`);
  const quarter = turns % 4 === 0 ? turns / 4 : turns;
  const turned: Turned[] = [];
  for (let k = 0; k < turns; k++) {
    const turn = (k * 360) / turns;
    const before = turned[k - quarter];
    const picture = before ? quarterTurn(before.picture) : prepare(patch, turn, side);
    turned.push({ turn, picture });
  }
  return turned;
}

/**
 * Vectors of a query's region in all the directions it is turned to.
 * @param turns how many; the model's own number when left out
 */
export async function embedQuery(patch: Patch, turns?: number, folder?: string): Promise<TurnedVector[]> {
  const { facts } = await network(folder);
  const turned = turnsOf(patch, turns ?? facts.queryTurns, facts.side);
  const vectors = await embed(
    turned.map(({ picture }) => picture),
    folder,
  );
  return turned.flatMap(({ turn }, k) => {
    const vector = vectors[k];
    return vector ? [{ turn, vector }] : [];
  });
}

async function run(session: InferenceSession, facts: ModelFacts, batch: readonly Float32Array[]) {
  const { side, dimension, input, output } = facts;
  const values = new Float32Array(batch.length * side * side);
  for (const [k, picture] of batch.entries()) {
    if (picture.length !== side * side)
      throw new Error(`picture: must hold ${side} x ${side} numbers. Received ${picture.length}.`);
    values.set(picture, k * side * side);
  }
  const answer = await session.run({ [input]: new Tensor("float32", values, [batch.length, 1, side, side]) });
  const data = answer[output]?.data;
  if (!(data instanceof Float32Array) || data.length !== batch.length * dimension)
    throw new Error(
      `${facts.id}: must answer ${batch.length} x ${dimension} numbers. Received ${data?.length}.`,
    );
  return batch.map((_, k) => data.slice(k * dimension, (k + 1) * dimension));
}

function network(folder = modelFolder()): Promise<Network> {
  held.countermarkNetworks ??= new Map();
  const networks = held.countermarkNetworks;
  const loaded =
    networks.get(folder) ??
    load(folder).catch((error: unknown) => {
      // The next call tries again: the operator may have put the file right.
      networks.delete(folder);
      throw error;
    });
  networks.set(folder, loaded);
  return loaded;
}

async function load(folder: string): Promise<Network> {
  const facts = await readModelFacts(folder);
  const session = await InferenceSession.create(await readNetwork(facts, folder), {
    executionProviders: ["cpu"],
    graphOptimizationLevel: "all",
    intraOpNumThreads: threads(),
    interOpNumThreads: 1,
    // Threads that wait for work sleep: spinning, they take from others what a second thread gains.
    extra: { session: { intra_op: { allow_spinning: "0" } } },
  });
  return { facts, session };
}

/** One thread beats two whenever the machine is busy, and a server is. */
function threads(): number {
  const asked = process.env.COUNTERMARK_THREADS;
  if (!asked) return 1;
  const count = Number(asked);
  if (!Number.isInteger(count) || count < 1 || count > 64)
    throw new Error(`COUNTERMARK_THREADS: must be a whole number from 1 to 64. Received ${asked}.`);
  return count;
}
