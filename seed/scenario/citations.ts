import { citeInFull } from "./read.ts";

/** An invented source as a citation needs it: what it is, author or body, title, year. */
type Cited = readonly [kind: string, author: string, title: string, year: string];

const directory = (year: string): Cited => [
  "book",
  "Tolliver and Sons",
  "Tolliver's Directory of the Ennerwold Towns",
  year,
];

/** Those of `sources.txt` that are one work or one register, by their codes; a whole archive is cited in words. */
const WORKS: Readonly<Record<string, Cited>> = {
  TL: ["archive document", "Company of Pewterers, Carnhythe", "Touch ledger, Ennerwold Record Office", ""],
  OLD: ["book", "M. Oldacre", "Touches of Ennerwold", "1931"],
  WIL: ["book", "E. Wilmot-Strand", "Stoneware of the Thrine", "1958"],
  DKR: ["book", "P. Hallam-Roe", "Kiln Sites at Dunmarrow: Report on the Trenches", "1964"],
  RTS: ["patent or register", "Carnhythe Chamber of Trade", "Register of Trade Signs", ""],
  HMO: ["archive document", "Hallowdene Clock Company", "Order books, Hallowdene Museum", ""],
  GHB: ["archive document", "Carnhythe Guild Hall", "Assay day-books", ""],
  GAZ: ["archive document", "The Ennerwold Gazette", "Notice in the newspaper", ""],
  D1784: directory("1784"),
  D1812: directory("1812"),
  D1834: directory("1834"),
  D1861: directory("1861"),
  D1889: directory("1889"),
  D1910: directory("1910"),
  D1936: directory("1936"),
};

/** `OLD p. 22` as the import reads a citation; null for a source that is cited in words. */
function citation(cited: string): string | null {
  const [, code = "", place = ""] = /^([A-Z][A-Z0-9]+),?\s*(.*)$/.exec(cited.trim()) ?? [];
  const work = WORKS[code];
  return work ? [...work, place].join(" | ") : null;
}

/** What an entry cites, parted into citations and sources in words. */
export function partSources(
  cited: readonly string[],
  sources: ReadonlyMap<string, string>,
): { citations: string; sources: string } {
  const inFull = cited.map((one) => [citation(one), citeInFull(one, sources)] as const);
  return {
    citations: inFull.flatMap(([structured]) => structured ?? []).join("; "),
    sources: inFull.flatMap(([structured, words]) => (structured === null ? words : [])).join("; "),
  };
}
