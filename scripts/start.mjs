// Serves Countermark from a checkout, whatever is missing: packages, database client, built app, database, demo.
// Only what an old Node can parse stands here: the first thing to do is to refuse an old Node in one line.
import { nodeIsTooOld } from "./prepare/node-version.mjs";

if (nodeIsTooOld()) process.exitCode = 1;
else import("./prepare/serve.mjs").then((module) => module.serve());
