// Checks and tests everything, whatever is missing first: packages, database client, built app, a browser.
// Only what an old Node can parse stands here: the first thing to do is to refuse an old Node in one line.
import { nodeIsTooOld } from "./prepare/node-version.mjs";

if (nodeIsTooOld()) process.exitCode = 1;
else import("./prepare/test.mjs").then((module) => module.test(process.argv.slice(2)));
