import { DATING_POLICY } from "#core/dating/prior";
import { USUAL } from "#core/dating/usual-evidence";
import { RELIABILITY } from "#core/decoding/reliability-policy";
import { checklistOf } from "#core/object-files/checklist";
import type { KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { ReportSource } from "#core/object-files/report/parts";
import type { Photograph } from "#core/photographs/photograph";
import { ALLOWANCES, CATALOGUE } from "#core/sizes/allowances";
import { live } from "../live.ts";
import { thisYear } from "./reading.ts";

type Found = { readonly kept: KeptFile; readonly entries: readonly MatchedEntry[] };

/** Everything that a report on a file is made of. */
export async function reportSource({ kept, entries }: Found, host: string): Promise<ReportSource> {
  const { hash } = await live();
  const tables = {
    ...{ usual: USUAL, reliability: RELIABILITY, dating: DATING_POLICY },
    ...{ allowances: ALLOWANCES, catalogue: CATALOGUE, checklist: checklistOf(kept.content.family) },
  };
  return {
    ...{ kept, entries, host, thisYear: thisYear(), language: "en-GB" },
    references: await referencesOf(kept),
    tables: hash(tables),
  };
}

/** The first photograph of each revision that a mark is pinned to, but one that moderators hid. */
async function referencesOf({ content }: KeptFile): Promise<Readonly<Record<string, Photograph>>> {
  const { revisions, contents } = await live();
  const references: Record<string, Photograph> = {};
  for (const { match } of content.marks) {
    if (!match || references[match.entry]) continue;
    const shown = await revisions.shown(match.entry, match.revision.number);
    for (const photograph of shown?.view.photographs ?? []) {
      if (references[match.entry] || (await contents.isHiddenImage(photograph.sha256))) continue;
      references[match.entry] = photograph;
    }
  }
  return references;
}

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
  for (const { sha256 } of Object.values(references)) await read(sha256);
  return images;
}
