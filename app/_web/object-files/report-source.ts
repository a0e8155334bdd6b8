import { DATING_POLICY } from "#core/dating/prior";
import { USUAL } from "#core/dating/usual-evidence";
import { DECODER_TABLES } from "#core/decoding/decoder-tables";
import { RELIABILITY } from "#core/decoding/reliability-policy";
import { checklistOf } from "#core/object-files/checklist";
import type { KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { LinkedArtSource } from "#core/object-files/report/linked-art";
import type { ReportSource } from "#core/object-files/report/parts";
import { ALLOWANCES, CATALOGUE } from "#core/sizes/allowances";
import { compareMarks } from "#usecases/object-files/compare-marks";
import { live } from "../live.ts";
import { thisYear } from "./reading.ts";

type Found = { readonly kept: KeptFile; readonly entries: readonly MatchedEntry[] };

/** What a file as Linked Art is made of. */
export const linkedArtSource = ({ kept, entries }: Found, host: string): LinkedArtSource => ({
  ...{ kept, entries, host, thisYear: thisYear() },
});

/** Everything that a report on a file is made of. */
export async function reportSource({ kept, entries }: Found, host: string): Promise<ReportSource> {
  const wired = await live();
  return {
    ...{ kept, entries, host, thisYear: thisYear(), language: "en-GB" },
    references: await compareMarks(wired, kept),
    tables: {
      rules: wired.hash(RULES),
      decoders: wired.hash(DECODER_TABLES),
      checklist: wired.hash(checklistOf(kept.content.family)),
    },
  };
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
