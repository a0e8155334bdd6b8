import { createHash } from "node:crypto";
import { zip } from "fflate";
import type { Reports } from "../../_usecases/ports/reports.ts";

const MANIFEST = "manifest-sha256.txt";

/** Packs files with a manifest of their SHA-256 sums, one a line as `sha256sum --check` reads them. */
export const packReport: Reports["archive"] = (files) => {
  const sums = files.map(
    ({ path, bytes }) => `${createHash("sha256").update(bytes).digest("hex")}  ${path}\n`,
  );
  const packed = Object.fromEntries(
    // What is a picture or a PDF is as small as it gets.
    files.map(({ path, bytes }) => [
      path,
      [bytes, { level: /\.(txt|json|jsonld)$/.test(path) ? 6 : 0 }] as const,
    ]),
  );
  const manifest = new TextEncoder().encode(sums.join(""));
  return new Promise((resolve, reject) => {
    zip(
      { ...(packed as Record<string, [Uint8Array, { level: 0 | 6 }]>), [MANIFEST]: manifest },
      (error, bytes) => (error ? reject(error) : resolve(bytes)),
    );
  });
};
