import { InferenceSession, Tensor } from "onnxruntime-node";
import { type ModelFacts, modelFolder, type NetworkFacts, readModelFacts, readNetwork } from "./model.ts";
import { type Patch, prepare } from "./preprocess.ts";
import { quarterTurn } from "./square.ts";

/** What the model makes of a picture. */
export type Described = {
  /** Unit length, so that a dot product is a similarity. */
  readonly vector: Float32Array;
  /** 64 x 10 x 10 numbers, unit length in each cell, in 127ths; null from a model without details. */
  readonly details: Int8Array | null;
};

/** The same of a query turned by so many degrees clockwise. */
export type TurnedVector = Described & { readonly turn: number };

/** A prepared picture of a query turned by so many degrees clockwise. */
export type Turned = { readonly turn: number; readonly picture: Float32Array };

type Session = { readonly facts: NetworkFacts; readonly session: InferenceSession };
type Network = {
  readonly facts: ModelFacts;
  readonly sessions: readonly Session[];
  readonly pairs: InferenceSession | null;
};

/** Numbers from -1 to 1 as signed bytes. */
const BYTE = 127;

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
  const model = await loaded;
  for (const { session } of model?.sessions ?? []) await session.release();
  await model?.pairs?.release();
}

/**
 * Descriptions of prepared pictures, in the same order; a picture's does not depend on its neighbours.
 * @param batch pictures of side * side numbers, as ml/preprocess.ts makes them
 * @throws Error when the model cannot be loaded or a picture has another size
 */
export async function embed(batch: readonly Float32Array[], folder?: string): Promise<Described[]> {
  const { facts, sessions } = await network(folder);
  const described: Described[] = [];
  for (let start = 0; start < batch.length; start += LARGEST_BATCH)
    described.push(...(await run(sessions, facts, batch.slice(start, start + LARGEST_BATCH))));
  return described;
}

/** The description of a reference photograph's region, as it stands. */
export async function embedReference(patch: Patch, folder?: string): Promise<Described> {
  const { facts } = await network(folder);
  const [described] = await embed([prepare(patch, 0, facts.side)], folder);
  if (!described) throw new Error("The network gave no vector for one picture.");
  return described;
}

/** A pair to be judged: details of a query's direction and of a reference, and how alike their vectors are. */
export type Pair = {
  readonly query: Described;
  readonly reference: Described;
};

/**
 * Natural log-odds that query and reference show one mark, by their details; null for a model that judges none, and
 * for a pair without details.
 */
export async function judgePairs(pairs: readonly Pair[], folder?: string): Promise<(number | null)[]> {
  const { facts, pairs: session } = await network(folder);
  const said = facts.pairs;
  const whole = pairs.filter(({ query, reference }) => query.details && reference.details);
  if (!session || !said || whole.length === 0) return pairs.map(() => null);
  const size = said.channels * said.cells * said.cells;
  const [q, r] = [new Float32Array(whole.length * size), new Float32Array(whole.length * size)];
  const cosines = new Float32Array(whole.length);
  for (const [i, { query, reference }] of whole.entries()) {
    q.set(fromBytes(query.details, size), i * size);
    r.set(fromBytes(reference.details, size), i * size);
    cosines[i] = detailCosine(facts, query.vector, reference.vector);
  }
  const shape = [whole.length, said.channels, said.cells, said.cells];
  const answer = await session.run({
    [said.query]: new Tensor("float32", q, shape),
    [said.reference]: new Tensor("float32", r, shape),
    [said.cosine]: new Tensor("float32", cosines, [whole.length]),
  });
  const data = answer[said.output]?.data;
  if (!(data instanceof Float32Array) || data.length !== whole.length)
    throw new Error(`${facts.id}: must judge ${whole.length} pairs. Received ${data?.length}.`);
  const odds = new Map(whole.map((pair, i) => [pair, data[i] ?? null]));
  return pairs.map((pair) => odds.get(pair) ?? null);
}

/** The cosine of that part of two vectors which the network with details made. */
function detailCosine({ networks }: ModelFacts, a: Float32Array, b: Float32Array): number {
  let start = 0;
  for (const { dimension, details } of networks) {
    if (details !== null) {
      let sum = 0;
      for (let i = start; i < start + dimension; i++) sum += (a[i] ?? 0) * (b[i] ?? 0);
      return sum * networks.length;
    }
    start += dimension;
  }
  return 0;
}

function fromBytes(details: Int8Array | null, size: number): Float32Array {
  if (details?.length !== size)
    throw new Error(`details: must hold ${size} numbers. Received ${details?.length ?? 0}.`);
  return Float32Array.from(details, (each) => each / BYTE);
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
  const described = await embed(
    turned.map(({ picture }) => picture),
    folder,
  );
  return turned.flatMap(({ turn }, k) => {
    const one = described[k];
    return one ? [{ turn, ...one }] : [];
  });
}

async function run(sessions: readonly Session[], facts: ModelFacts, batch: readonly Float32Array[]) {
  const { side, dimension, id } = facts;
  const values = new Float32Array(batch.length * side * side);
  for (const [k, picture] of batch.entries()) {
    if (picture.length !== side * side)
      throw new Error(`picture: must hold ${side} x ${side} numbers. Received ${picture.length}.`);
    values.set(picture, k * side * side);
  }
  const made = batch.map(() => ({ vector: new Float32Array(dimension), details: null as Int8Array | null }));
  const share = 1 / Math.sqrt(sessions.length);
  let start = 0;
  for (const { facts: own, session } of sessions) {
    const input = new Tensor("float32", values, [batch.length, 1, side, side]);
    const answer = await session.run({ [own.input]: input });
    const numbers = outputOf(answer[own.output]?.data, batch.length * own.dimension, id);
    const fine = own.details === null ? null : outputOf(answer[own.details]?.data, null, id);
    for (const [k, one] of made.entries()) {
      for (let i = 0; i < own.dimension; i++)
        one.vector[start + i] = (numbers[k * own.dimension + i] ?? 0) * share;
      if (fine) one.details = toBytes(fine, k, fine.length / batch.length);
    }
    start += own.dimension;
  }
  return made;
}

function outputOf(data: unknown, length: number | null, model: string): Float32Array {
  if (!(data instanceof Float32Array) || (length !== null && data.length !== length))
    throw new Error(
      `${model}: must answer ${length ?? "some"} numbers. Received ${data instanceof Float32Array ? data.length : typeof data}.`,
    );
  return data;
}

function toBytes(from: Float32Array, place: number, size: number): Int8Array {
  return Int8Array.from({ length: size }, (_, i) => Math.round((from[place * size + i] ?? 0) * BYTE));
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
  const open = async (file: Pick<NetworkFacts, "file" | "sha256">) =>
    InferenceSession.create(await readNetwork(file, folder), {
      executionProviders: ["cpu"],
      graphOptimizationLevel: "all",
      intraOpNumThreads: threads(),
      interOpNumThreads: 1,
      // Threads that wait for work sleep: spinning, they take from others what a second thread gains.
      extra: { session: { intra_op: { allow_spinning: "0" } } },
    });
  const sessions: Session[] = [];
  for (const each of facts.networks) sessions.push({ facts: each, session: await open(each) });
  return { facts, sessions, pairs: facts.pairs ? await open(facts.pairs) : null };
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
