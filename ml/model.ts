import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** A network that makes one part of a vector. */
export type NetworkFacts = {
  /** File name, beside model.json. */
  readonly file: string;
  /** SHA-256 of that file, hexadecimal. */
  readonly sha256: string;
  readonly input: string;
  readonly output: string;
  /** How many numbers it gives, of unit length together. */
  readonly dimension: number;
  /** The output that holds the details of a picture, channels x cells x cells; null when it has none. */
  readonly details: string | null;
};

/** The network that judges the details of two photographs. */
type PairFacts = {
  readonly file: string;
  readonly sha256: string;
  readonly query: string;
  readonly reference: string;
  readonly cosine: string;
  readonly output: string;
  readonly channels: number;
  readonly cells: number;
};

/** What model.json says about the networks beside it. */
export type ModelFacts = {
  /** Name and version, such as `marks@1.0.0`; kept with every vector and every look-up. */
  readonly id: string;
  readonly name: string;
  readonly version: string;
  /** Their vectors are joined and divided by the root of how many they are: a dot product is the mean of the cosines. */
  readonly networks: readonly NetworkFacts[];
  readonly pairs: PairFacts | null;
  /** The network sees side x side numbers. */
  readonly side: number;
  /** A vector's length. */
  readonly dimension: number;
  /** Into how many directions a query is turned. */
  readonly queryTurns: number;
  /** Cosine similarities at which the words change. */
  readonly likeness: {
    readonly veryClose: number;
    readonly close: number;
    readonly some: number;
    readonly noneBelow: number;
  };
};

/**
 * The folder of model.json and its network: COUNTERMARK_MODEL when set, else `ml/model` under the working
 * directory, else the folder beside this file. The working directory comes first because a bundler moves
 * this file away from its neighbours.
 */
export function modelFolder(): string {
  const named = process.env.COUNTERMARK_MODEL;
  return named ? resolve(/* turbopackIgnore: true */ named) : shippedFolder();
}

/** The folder of the networks that came with the program, whatever COUNTERMARK_MODEL says. */
export function shippedFolder(): string {
  const fromHere = join(/* turbopackIgnore: true */ process.cwd(), "ml", "model");
  if (existsSync(join(fromHere, "model.json"))) return fromHere;
  return join(dirname(fileURLToPath(import.meta.url)), "model");
}

/**
 * Reads and checks model.json.
 * @throws Error naming the file, the field, the rule and the value received
 */
export async function readModelFacts(folder = modelFolder()): Promise<ModelFacts> {
  const path = join(folder, "model.json");
  const json: unknown = JSON.parse(
    await readFile(path, "utf8").catch((cause: unknown) => missing(path, cause)),
  );
  const at = fieldsOf(json, path, "");
  const likeness = fieldsOf(at.value("likeness"), path, "likeness.");
  const name = at.text("name", /^[a-z][a-z0-9-]*$/);
  const version = at.text("version", /^\d+\.\d+\.\d+$/);
  const networks = networksOf(json, path);
  const dimension = at.count("dimension");
  const together = networks.reduce((sum, each) => sum + each.dimension, 0);
  if (together !== dimension)
    throw new Error(
      `${path}: dimension must be ${together}, what its networks give together. Received ${dimension}.`,
    );
  return {
    id: `${name}@${version}`,
    name,
    version,
    networks,
    pairs: pairsOf(json, path, networks),
    side: at.count("side"),
    dimension,
    queryTurns: at.count("queryTurns"),
    likeness: {
      veryClose: likeness.cosine("veryClose"),
      close: likeness.cosine("close"),
      some: likeness.cosine("some"),
      noneBelow: likeness.cosine("noneBelow"),
    },
  };
}

/** One network in model.json's own fields, as the first edition had it, or a list of them. */
function networksOf(json: unknown, path: string): readonly NetworkFacts[] {
  const listed = fieldsOf(json, path, "").value("networks");
  if (listed === undefined) return [networkOf(json, path, "")];
  if (!Array.isArray(listed) || listed.length === 0)
    throw new Error(`${path}: networks must be a list of one or more. Received ${JSON.stringify(listed)}.`);
  return listed.map((each: unknown, i) => networkOf(each, path, `networks[${i}].`));
}

function networkOf(json: unknown, path: string, prefix: string): NetworkFacts {
  const at = fieldsOf(json, path, prefix);
  return {
    ...fileOf(at),
    input: at.text("input", /./),
    output: at.text("output", /./),
    dimension: at.count("dimension"),
    details: at.value("details") === undefined ? null : at.text("details", /./),
  };
}

function pairsOf(json: unknown, path: string, networks: readonly NetworkFacts[]): PairFacts | null {
  const found = fieldsOf(json, path, "").value("pairs");
  if (found === undefined) return null;
  if (!networks.some(({ details }) => details !== null))
    throw new Error(`${path}: pairs must stand beside a network with details. Received none.`);
  const at = fieldsOf(found, path, "pairs.");
  return {
    ...fileOf(at),
    query: at.text("query", /./),
    reference: at.text("reference", /./),
    cosine: at.text("cosine", /./),
    output: at.text("output", /./),
    channels: at.count("channels"),
    cells: at.count("cells"),
  };
}

const fileOf = (at: ReturnType<typeof fieldsOf>) => ({
  file: at.text("file", /^[\w.-]+\.onnx$/),
  sha256: at.text("sha256", /^[0-9a-f]{64}$/),
});

/** Every file of a model, with its sum. */
export const filesOf = ({ networks, pairs }: ModelFacts): readonly Pick<NetworkFacts, "file" | "sha256">[] =>
  pairs ? [...networks, pairs] : networks;

/**
 * Reads a network and refuses one whose SHA-256 is not the one model.json names, so that no vector is ever made by
 * another network than it is filed under.
 * @throws Error naming both sums
 */
export async function readNetwork(
  { file, sha256 }: Pick<NetworkFacts, "file" | "sha256">,
  folder = modelFolder(),
): Promise<Uint8Array> {
  const path = join(folder, file);
  const content = await readFile(path).catch((cause: unknown) => missing(path, cause));
  const sum = createHash("sha256").update(content).digest("hex");
  if (sum !== sha256)
    throw new Error(
      `${path}: SHA-256 must be ${sha256} (model.json). Received ${sum}. ` +
        "The file was changed or not copied whole; restore ml/model from the release.",
    );
  return content;
}

/**
 * What calibration.json beside the network says; null when there is none. Whose it is and what it may say is judged
 * where it is applied.
 * @throws Error when it is no JSON
 */
export async function readCalibration(folder = modelFolder()): Promise<unknown> {
  const path = join(folder, "calibration.json");
  const text = await readFile(path, "utf8").catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return null;
    throw error;
  });
  try {
    return text === null ? null : JSON.parse(text);
  } catch (cause) {
    throw new Error(`${path}: must be JSON. Received ${text?.slice(0, 40)}`, { cause });
  }
}

export function missing(path: string, cause: unknown): never {
  throw new Error(`${path}: must be a readable file (COUNTERMARK_MODEL names the folder).`, { cause });
}

/** Reads the fields of a file of facts; each is refused by name, with its rule and the value received. */
export function fieldsOf(json: unknown, path: string, prefix: string) {
  const value = (key: string): unknown =>
    typeof json === "object" && json !== null
      ? Object.entries(json).find(([k]) => k === key)?.[1]
      : undefined;
  const refuse = (key: string, rule: string): never => {
    throw new Error(`${path}: ${prefix}${key} must be ${rule}. Received ${JSON.stringify(value(key))}.`);
  };
  return {
    value,
    text(key: string, pattern: RegExp): string {
      const found = value(key);
      return typeof found === "string" && pattern.test(found)
        ? found
        : refuse(key, `a text matching ${pattern}`);
    },
    count(key: string): number {
      const found = value(key);
      return Number.isInteger(found) && Number(found) > 0
        ? Number(found)
        : refuse(key, "a whole number above 0");
    },
    number(key: string): number {
      const found = value(key);
      return typeof found === "number" && Number.isFinite(found) ? found : refuse(key, "a number");
    },
    cosine(key: string): number {
      const found = value(key);
      return typeof found === "number" && found >= -1 && found <= 1
        ? found
        : refuse(key, "a number from -1 to 1");
    },
  };
}
