import { randomBytes } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/**
 * The secret that encrypts what signed-in browsers hold: the one given, else one that is made once and kept in the
 * data folder, readable to this user alone.
 * @returns a function that fetches it when it is first needed
 */
export function keepSecret(given: string | null, dataFolder: string): () => string {
  let known = given;
  return () => {
    known ??= readOrMake(dataFolder);
    return known;
  };
}

function readOrMake(dataFolder: string): string {
  const file = join(/* turbopackIgnore: true */ dataFolder, "sign-in-secret");
  mkdirSync(dataFolder, { recursive: true, mode: 0o700 });
  try {
    // Made only if it is not there: of two processes that start at once, one makes it and both read it.
    writeFileSync(file, randomBytes(48).toString("base64url"), { mode: 0o600, flag: "wx" });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
  }
  const secret = readFileSync(file, "utf8");
  if (secret.length < 32)
    throw new Error(
      `${file}: must hold at least 32 signs. Received ${secret.length}; remove it and start again.`,
    );
  return secret;
}
