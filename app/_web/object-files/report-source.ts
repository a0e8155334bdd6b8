import { DATING_POLICY } from "#core/dating/prior";
import { USUAL } from "#core/dating/usual-evidence";
import { DECODER_TABLES } from "#core/decoding/decoder-tables";
import { RELIABILITY } from "#core/decoding/reliability-policy";
import { checklistOf } from "#core/object-files/checklist";
import type { KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { LinkedArtSource } from "#core/object-files/report/linked-art";
import type { ReportSource } from "#core/object-files/report/parts";
import { fail } from "#core/result";
import { ALLOWANCES, CATALOGUE } from "#core/sizes/allowances";
import { compareMarks } from "#usecases/object-files/compare-marks";
import { type Live, live } from "../live.ts";
import { thisYear } from "./reading.ts";

type Found = { readonly kept: KeptFile; readonly entries: readonly MatchedEntry[] };

/** What a file as Linked Art is made of. */
export const linkedArtSource = ({ kept, entries }: Found, host: string): LinkedArtSource => ({
  ...{ kept, entries, host, thisYear: thisYear() },
});

/** A page is shown at once; what is laid over what by then is on it. */
const PATIENCE_MS = 100;
const LATE = fail({ field: "photograph", rule: "busy", received: "" });

/**
 * What the page of a report is made of, without waiting for marks that are still being laid over their references.
 * @returns `isWaiting` when some are: they are there when the page is asked for again in some seconds
 */
export async function reportForPage(
  found: Found,
  host: string,
): Promise<{ readonly source: ReportSource; readonly isWaiting: boolean }> {
  const { aligner } = await live();
  const until = Date.now() + PATIENCE_MS;
  let isWaiting = false;
  const impatient: typeof aligner = {
    align(query, reference) {
      const aligned = aligner.align(query, reference);
      // Whoever comes back is told of a failure; nobody waits here for it.
      aligned.catch(() => undefined);
      const late = new Promise<Awaited<typeof aligned>>((resolve) => {
        setTimeout(() => resolve(LATE), Math.max(0, until - Date.now()));
      });
      return Promise.race([aligned, late]).then((answer) => {
        isWaiting ||= answer === LATE;
        return answer;
      });
    },
  };
  const source = await reportSource(found, host, impatient);
  return { source, isWaiting };
}

/** Everything that a report on a file is made of. */
export async function reportSource(
  { kept, entries }: Found,
  host: string,
  aligner?: Live["aligner"],
): Promise<ReportSource> {
  const wired = await live();
  return {
    ...{ kept, entries, host, thisYear: thisYear(), language: "en-GB" },
    references: await compareMarks(aligner ? { ...wired, aligner } : wired, kept),
    tables: {
      ...hashesOf(wired),
      checklist: wired.hash(checklistOf(kept.content.family)),
    },
  };
}

/** What does not change while the host runs is hashed once. */
let hashes: { readonly rules: string; readonly decoders: string } | null = null;
function hashesOf({ hash }: Live) {
  hashes ??= { rules: hash(RULES), decoders: hash(DECODER_TABLES) };
  return hashes;
}

const RULES = {
  ...{ usual: USUAL, reliability: RELIABILITY, dating: DATING_POLICY },
  ...{ allowances: ALLOWANCES, catalogue: CATALOGUE },
};

type Image = { readonly bytes: Uint8Array; readonly type: string };

/** The images of a report: those of the file itself, scans as well, and references, which anybody may see. */
export async function reportImages({ kept, references }: ReportSource): Promise<ReadonlyMap<string, Image>> {
  const { pictures, objectImages } = await live();
  const { photographs, documents } = kept.content;
  const own = [...photographs, ...documents.flatMap(({ scans }) => scans)];
  const images = new Map<string, Image>();
  const read = async (sha256: string) => {
    const shown = images.has(sha256) ? null : await pictures.show(sha256, null);
    if (shown) images.set(sha256, shown);
  };
  for (const { sha256 } of own) if (await objectImages.has(kept.id, sha256)) await read(sha256);
  for (const { photograph } of Object.values(references)) await read(photograph.sha256);
  return images;
}
