import { takeWorksheetByForm } from "#web/object-files/take-worksheet-by-form";
import { writeAs } from "#web/write-as";

export const POST = writeAs("keep an object file", takeWorksheetByForm);
