import { mkdir, rm, statfs, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { filesOf, readModelFacts, readNetwork } from "#ml/model";
import { type Finding, finding, tryTo } from "./finding.ts";

const OLDEST_NODE = [20, 19] as const;
/** Below this the database may stop in the middle of writing. */
const LEAST_FREE_BYTES = 1e9;

export function checkNode(): Finding {
  const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
  const fits = major > OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor >= OLDEST_NODE[1]);
  return finding("Node", fits, `${process.version}; ${OLDEST_NODE.join(".")} or newer is needed`);
}

/** Loads the libraries with native code, which fail on a processor or system they were not made for. */
export async function checkLibraries(): Promise<readonly Finding[]> {
  return [
    await tryTo("sharp", async () => {
      const { default: sharp } = await import("sharp");
      await sharp({ create: { width: 8, height: 8, channels: 3, background: "#fff" } })
        .jpeg()
        .toBuffer();
      return `works, libvips ${sharp.versions.vips}`;
    }),
    await tryTo("onnxruntime-node", async () => {
      const { listSupportedBackends } = await import("onnxruntime-node");
      return `loads, runs on ${listSupportedBackends()
        .map((backend) => backend.name)
        .join(", ")}`;
    }),
  ];
}

export function checkModel(): Promise<Finding> {
  return tryTo("model", async () => {
    const facts = await readModelFacts();
    let bytes = 0;
    for (const file of filesOf(facts)) bytes += (await readNetwork(file)).byteLength;
    return `${facts.id}, ${(bytes / 1e6).toFixed(1)} MB, checksums as named`;
  });
}

/** Can the data folder be written to, and is there room? */
export function checkDisk(folder: string): Promise<Finding> {
  return tryTo("data folder", async () => {
    await mkdir(folder, { recursive: true, mode: 0o700 });
    const probe = join(folder, `probe-${process.pid}`);
    await writeFile(probe, "x");
    await rm(probe);
    const { bavail, bsize } = await statfs(folder);
    const free = `${(bavail * bsize) / 1e9 < 10 ? ((bavail * bsize) / 1e9).toFixed(1) : Math.round((bavail * bsize) / 1e9)} GB free`;
    if (bavail * bsize < LEAST_FREE_BYTES)
      throw new Error(`${folder}: at least 1 GB must be free. Received ${free}.`);
    return `${folder} can be written to, ${free}`;
  });
}
