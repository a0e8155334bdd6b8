// Builds the app when its sources have changed since the last build.
import { build, buildIsNeeded, generateClient } from "./prepare/build.mjs";
import { nodeIsTooOld } from "./prepare/node-version.mjs";

if (nodeIsTooOld()) process.exit(1);
await generateClient();
if (buildIsNeeded()) await build();
