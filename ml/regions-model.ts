import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { fieldsOf, type ModelFacts, missing, type NetworkFacts, shippedFolder } from "./model.ts";

/** What regions.json says about the network that finds the mark in a photograph. */
export type RegionsFacts = Pick<ModelFacts, "id" | "name" | "version" | "side"> &
  Pick<NetworkFacts, "file" | "sha256" | "input" | "output"> & {
    /** The network answers for cells x cells places of the square it sees. */
    readonly cells: number;
    /** Distances come out as natural logarithms, in units of so many of the square's pixels. */
    readonly unit: number;
    /**
     * From a place's score (before the logistic curve) to the probability that its box overlaps the mark's by half or
     * more: the logistic curve of offset + slope * score.
     */
    readonly confidence: { readonly offset: number; readonly slope: number };
  };

/**
 * Reads and checks regions.json, which lies beside model.json.
 * @throws Error naming the file, the field, the rule and the value received
 */
export async function readRegionsFacts(folder = shippedFolder()): Promise<RegionsFacts> {
  const path = join(folder, "regions.json");
  const json: unknown = JSON.parse(
    await readFile(path, "utf8").catch((cause: unknown) => missing(path, cause)),
  );
  const at = fieldsOf(json, path, "");
  const confidence = fieldsOf(at.value("confidence"), path, "confidence.");
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
    cells: at.count("cells"),
    unit: at.count("unit"),
    confidence: { offset: confidence.number("offset"), slope: confidence.number("slope") },
  };
}
