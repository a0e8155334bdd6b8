import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** What model.json says about the network beside it. */
export type ModelFacts = {
  /** Name and version, such as `marks@1.0.0`; kept with every vector and every look-up. */
  readonly id: string;
  readonly name: string;
  readonly version: string;
  /** File name of the network, beside model.json. */
  readonly file: string;
  /** SHA-256 of that file, hexadecimal. */
  readonly sha256: string;
  readonly input: string;
  readonly output: string;
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
  return {
    id: `${name}@${version}`,
    name,
    version,
    file: at.text("file", /^[\w.-]+\.onnx$/),
    sha256: at.text("sha256", /^[0-9a-f]{64}$/),
    input: at.text("input", /./),
    output: at.text("output", /./),
    side: at.count("side"),
    dimension: at.count("dimension"),
    queryTurns: at.count("queryTurns"),
    likeness: {
      veryClose: likeness.cosine("veryClose"),
      close: likeness.cosine("close"),
      some: likeness.cosine("some"),
      noneBelow: likeness.cosine("noneBelow"),
    },
  };
}

/**
 * Reads the network and refuses one whose SHA-256 is not the one model.json names, so that no vector is ever
 * made by another network than it is filed under.
 * @throws Error naming both sums
 */
export async function readNetwork(
  facts: Pick<ModelFacts, "id" | "file" | "sha256">,
  folder = modelFolder(),
): Promise<Uint8Array> {
  const path = join(folder, facts.file);
  const content = await readFile(path).catch((cause: unknown) => missing(path, cause));
  const sum = createHash("sha256").update(content).digest("hex");
  if (sum !== facts.sha256)
    throw new Error(
      `${path}: SHA-256 must be ${facts.sha256} (model.json, ${facts.id}). Received ${sum}. ` +
        "The file was changed or not copied whole; restore ml/model from the release.",
    );
  return content;
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
