import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { composeDesign } from "../designs/compose.ts";
import type { Design } from "../designs/design.ts";
import { readSubject, type Subject } from "../render/subject.ts";
import { partSources } from "./citations.ts";
import { sayColour } from "./colour-words.ts";
import { type EntryRow, type MakerRow, splitList } from "./demo.ts";
import { fieldOf } from "./fields.ts";
import { type ChapterRecord, citeInFull, readChapter, readSources } from "./read.ts";

interface TryMark {
  key: string;
  title: string;
  /** Empty where no entry has the mark. */
  entry: string;
  note: string;
  subject: Subject;
}

/** A mark that an open question of the demo asks after. */
interface AskedMark {
  key: string;
  subject: Subject;
}

export interface Scenario {
  makers: MakerRow[];
  entries: EntryRow[];
  subjects: Map<string, Subject>;
  tries: TryMark[];
  questions: AskedMark[];
}

const MATERIAL_SAID: Record<string, string> = {
  pewter: "pewter",
  plate: "silver plate",
  brass: "brass",
  steel: "steel",
  nickel: "nickel-plated iron",
  copper: "copper",
  lead: "lead",
  iron: "iron",
  tin: "tinplate",
  tinplate: "printed tinplate",
  enamel: "enamelled iron",
  paper: "paper",
  woven: "woven ribbon",
  embroidered: "linen",
  cloth: "cotton",
  wood: "wood",
  glass: "glass",
};

function sayMaterial(subject: Subject): string {
  if (subject.material === "stoneware") {
    if (subject.variety === "unglazed") return "ash-glazed stoneware";
    return subject.variety === "white" ? "slip-glazed stoneware" : "salt-glazed stoneware";
  }
  if (subject.material === "wood") return `${subject.variety} wood`;
  return MATERIAL_SAID[subject.material] ?? subject.material;
}

function sayTechnique(subject: Subject): string {
  switch (subject.material) {
    case "tinplate":
    case "enamel":
    case "cloth":
      return "printed";
    case "paper":
      return "paper";
    case "woven":
      return "woven";
    case "embroidered":
      return "embroidered";
    case "stoneware":
      return subject.how === "painted" || subject.how === "printed" ? subject.how : "impressed";
    case "wood":
      return subject.how === "inked" ? "printed" : subject.how === "burnt" ? "other" : "stamped";
    case "glass":
      return subject.how === "etched" ? "etched" : "cast";
    default:
      return subject.how === "engraved"
        ? "incised"
        : subject.how === "etched"
          ? "etched"
          : subject.how === "cast"
            ? "cast"
            : "stamped";
  }
}

const INKED = new Set(["tinplate", "enamel", "cloth", "paper", "woven", "embroidered"]);

function sayColours(subject: Subject): string {
  if (subject.how === "cobalt") return "blue";
  const painted =
    subject.material === "stoneware" && (subject.how === "painted" || subject.how === "printed");
  if (!painted && !INKED.has(subject.material) && subject.how !== "inked") return "";
  const used = painted || subject.how === "inked" ? subject.inks.slice(1) : subject.inks;
  return [...new Set(used.map(sayColour))].join("; ");
}

function subjectOf(record: ChapterRecord): Subject {
  const design: Design = composeDesign(record.fields.get("design") ?? "");
  const inks = (record.fields.get("inks") ?? "").split(/\s+/).filter(Boolean);
  const needed = Math.max(...design.device.map((piece) => piece.ink));
  if (inks.length > 0 && inks.length < needed + 1)
    throw new Error(`inks: must name the ground and ${needed} inks. Received ${inks.length} colours.`);
  return readSubject(
    record.fields.get("render") ?? "",
    design,
    inks,
    record.fields.get("around") ?? inks[0] ?? "#cfc6b0",
  );
}

/** Builds the demo's rows and what is to be photographed out of the chapters in a folder. */
export function buildScenario(folder: string): Scenario {
  const sources = readSources(readFileSync(join(folder, "sources.txt"), "utf8"));
  const cite = (record: ChapterRecord): string =>
    splitList(record.fields.get("sources") ?? "")
      .map((one) => citeInFull(one, sources))
      .join("; ");
  const chapters = readdirSync(folder)
    .filter((name) => name.endsWith(".txt") && name !== "sources.txt")
    .sort();
  const makers: MakerRow[] = [];
  const entries: EntryRow[] = [];
  const subjects = new Map<string, Subject>();
  const tries: TryMark[] = [];
  const questions: AskedMark[] = [];
  const imitations: [string, string][] = [];
  for (const chapter of chapters) {
    let maker = "";
    for (const record of readChapter(readFileSync(join(folder, chapter), "utf8"), chapter)) {
      const take = (name: string): string => record.fields.get(name) ?? "";
      try {
        if (record.sort === "maker") {
          maker = record.key;
          if (take("name") === "") continue;
          makers.push({
            key: record.key,
            name: take("name"),
            kind: take("kind"),
            place: take("place"),
            trades: splitList(take("trades")).join("; "),
            active: take("active"),
            other_names: take("names"),
            note: take("note"),
            follows: take("follows"),
            follows_how: take("how"),
            sources: cite(record),
          });
        } else if (record.sort === "entry") {
          const subject = subjectOf(record);
          subjects.set(record.key, subject);
          const owner = record.fields.has("maker") ? take("maker") : maker;
          if (take("imitates")) imitations.push([take("imitates"), record.key]);
          entries.push({
            key: record.key,
            title: take("title"),
            kind: take("kind") || "mark",
            field: fieldOf(chapter, subject),
            maker: owner,
            maker_part: owner ? take("part") || "made" : "other",
            words: subject.design.words,
            emblem: subject.design.emblem,
            frame: subject.design.frame,
            technique: take("technique") || sayTechnique(subject),
            material: take("material") || sayMaterial(subject),
            place_on_object: take("on"),
            colours: sayColours(subject),
            size_mm: `${subject.design.width} x ${subject.design.height}`,
            period: take("period"),
            period_from_reason: take("from"),
            period_to_reason: take("to"),
            description: take("about"),
            distinguish: take("unlike"),
            reproductions: take("repro"),
            preceded_by: splitList(take("after")).join("; "),
            followed_by: "",
            variant_of: splitList(take("variant")).join("; "),
            imitated_by: "",
            ...partSources(splitList(take("sources")), sources),
          });
        } else if (record.sort === "try") {
          const subject = take("entry") ? subjects.get(take("entry")) : subjectOf(record);
          if (!subject)
            throw new Error(`entry: must be an entry of the scenario. Received "${take("entry")}".`);
          tries.push({
            key: record.key,
            title: take("title"),
            entry: take("entry"),
            note: take("note"),
            subject,
          });
        } else if (record.sort === "question") {
          const subject = take("entry") ? subjects.get(take("entry")) : subjectOf(record);
          if (!subject)
            throw new Error(`entry: must be an entry of the scenario. Received "${take("entry")}".`);
          questions.push({ key: record.key, subject });
        } else throw new Error(`record: must be maker, entry, try or question. Received "${record.sort}".`);
      } catch (error) {
        throw new Error(
          `${record.where} ${record.key}: ${error instanceof Error ? error.message : String(error)}`,
        );
      }
    }
  }
  for (const entry of entries) {
    entry.followed_by = entries
      .filter((other) => splitList(other.preceded_by).includes(entry.key))
      .map((other) => other.key)
      .join("; ");
    entry.imitated_by = imitations
      .filter(([original]) => original === entry.key)
      .map(([, copy]) => copy)
      .join("; ");
  }
  return { makers, entries, subjects, tries, questions };
}
