// Runs one of the TypeScript programs here, whatever is missing first: node scripts/run.mjs scripts/doctor.ts [words]
import { nodeIsTooOld } from "./prepare/node-version.mjs";

if (nodeIsTooOld()) process.exitCode = 1;
else import("./prepare/run-program.mjs").then((module) => module.runProgram(process.argv.slice(2)));
