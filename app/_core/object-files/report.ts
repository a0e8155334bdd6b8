import { anomaliesOf } from "./anomalies.ts";
import { estimateOf, evidenceOf } from "./evidence.ts";
import { cautionsOf } from "./finding.ts";
import { noticesOf } from "./notices.ts";
import { checkProvenance } from "./provenance.ts";
import type { Phrase, Report } from "./report/blocks.ts";
import { anomaliesSection } from "./report/doubt-sections.ts";
import { evidenceSection } from "./report/evidence-section.ts";
import { findingSection } from "./report/finding-section.ts";
import { conditionSection, documentsSection, measurementsSection } from "./report/kept-sections.ts";
import { marksSection } from "./report/marks-section.ts";
import type { ReportParts, ReportSource } from "./report/parts.ts";
import { msg } from "./report/phrases.ts";
import { provenanceSection } from "./report/provenance-section.ts";
import { ROOMS, type Room } from "./report/room.ts";
import { cautionsSection, citationsSection, versionsSection } from "./report/standing-sections.ts";
import { sizesOf } from "./sizes.ts";

/**
 * What a report says, section by section, with its sentences still to be made: the page, the PDF and the archive all
 * say the same. What follows from the file is reckoned once, however often it is said in another room.
 */
export function reportOf(source: ReportSource): (room?: Room) => Report<Phrase> {
  const derived = derive(source);
  return (room = ROOMS[0]) => sayIn({ ...derived, room });
}

function sayIn(parts: ReportParts): Report<Phrase> {
  const { kept, file, language } = parts;
  return {
    title: file.title,
    language,
    subtitle: msg("subtitle", {
      family: { key: `objectPages.families.${file.family}` },
      owner: kept.owner.name,
      version: kept.version,
      day: { edtf: kept.updatedAt.toISOString().slice(0, 10) },
    }),
    sections: [
      findingSection(parts),
      evidenceSection(parts),
      marksSection(parts),
      anomaliesSection(parts),
      provenanceSection(parts),
      documentsSection(parts),
      measurementsSection(parts),
      conditionSection(parts),
      citationsSection(parts),
      versionsSection(parts),
      cautionsSection(parts),
    ],
  };
}

function derive(source: ReportSource): Omit<ReportParts, "room"> {
  const { kept, entries, thisYear } = source;
  const file = kept.content;
  const evidence = evidenceOf(file, entries);
  const estimate = estimateOf(file, entries, thisYear);
  const found = anomaliesOf(file, entries);
  return {
    ...{ ...source, file, evidence, estimate, found },
    check: checkProvenance(file, evidence, estimate),
    notices: noticesOf(file, entries),
    sizes: sizesOf(file),
    cautions: cautionsOf(file, found, estimate),
  };
}
