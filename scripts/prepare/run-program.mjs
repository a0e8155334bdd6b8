import { clientIsOld, generateClient, tsx } from "./build.mjs";
import { installWhenNeeded } from "./install.mjs";
import { CommandFailed, Refused, show, stopChildrenWhenAsked } from "./run.mjs";

/** Installs and generates what is missing, then runs a TypeScript program to its end with this terminal. */
export async function runProgram([file, ...words]) {
  stopChildrenWhenAsked(() => undefined);
  try {
    await installWhenNeeded();
    if (clientIsOld()) await generateClient();
    process.exitCode = await show(process.execPath, tsx(file, ...words));
  } catch (error) {
    console.error(error instanceof CommandFailed || error instanceof Refused ? `\n${error.message}` : error);
    process.exitCode = 1;
  }
}
