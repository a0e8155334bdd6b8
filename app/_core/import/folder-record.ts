import type { FieldError } from "../field-error.ts";
import type { Columns } from "./columns.ts";

export const IMPORT_FILES = ["makers", "entries", "photographs"] as const;
export type ImportFile = (typeof IMPORT_FILES)[number];

/** A record of a folder to import, with where it stood, so that an error can point at it. */
export type FolderRecord = { readonly file: string; readonly line: number; readonly columns: Columns };

/** Something wrong with one column of one line. */
export type FolderError = FieldError & { readonly file: string; readonly line: number };
