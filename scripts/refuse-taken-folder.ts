import { DataFolderInUse, holderOf } from "#adapters/data-folder-lock";

/** Prints who has the data folder named on the command line, and nothing when nobody has it. */
const folder = process.argv[2];
if (folder === undefined) throw new Error("A data folder must be named. Received none.");
const holder = holderOf(folder);
if (holder) console.log(new DataFolderInUse(folder, holder).message);
