import { beginObjectFile } from "#web/object-files/begin-object-file";
import { writeAs } from "#web/write-as";

export const POST = writeAs("keep an object file", beginObjectFile);
