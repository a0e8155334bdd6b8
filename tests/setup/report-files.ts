import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import sharp from "sharp";
import { LONGEST, MOST } from "#core/object-files/limits";
import type { FilePhotograph, ObjectFile } from "#core/object-files/object-file";
import type { MarkReference, ReportSource } from "#core/object-files/report/parts";
import { framed } from "#core/photographs/proposal";
import { wholeOf } from "#core/photographs/region";
import { proposeRegions } from "#ml/propose";
import { alignPhotographs } from "#ml/verify";
import { SCHOONER, SHOP, STEAMER } from "../core/object-files/steamer-story.ts";
import { fileOf, hash, id, pin, THIS_YEAR, type Typed } from "../core/object-files/story.ts";
import { pictureOfBoat } from "./picture-of-boat.ts";

const demo = (path: string) => fileURLToPath(new URL(`../../seed/demo/${path}`, import.meta.url));

/** A file to report on, with the images that its report may show. */
export type ReportFile = {
  readonly source: ReportSource;
  readonly images: ReadonlyMap<string, Uint8Array>;
};
type Taken = { readonly photograph: FilePhotograph; readonly bytes: Buffer };

async function taken(
  n: number,
  bytes: Buffer,
  of: FilePhotograph["of"] = "whole",
  item: string | null = null,
  shows = "From port, with a scale of 100 mm",
): Promise<Taken> {
  const { width, height } = await sharp(bytes).metadata();
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  return {
    bytes,
    photograph: { id: id(800 + n), sha256, width, height, shows, credit: "Mara Osk", of, item },
  };
}

/** A photograph of the demo's reference, as it is recorded. */
async function reference(file: string) {
  const rows: Record<string, string>[] = parse(await readFile(demo("photographs.csv")), { columns: true });
  const row = rows.find((each) => each.file === `photographs/${file}`) ?? {};
  const [x = 0, y = 0, width = 0, height = 0] = (row.region ?? "").split(",").map(Number);
  const bytes = await readFile(demo(`photographs/${file}`));
  const shown = await taken(0, bytes);
  const { shows = "", credit = "", licence = "" } = row;
  return {
    bytes,
    photograph: {
      ...{
        id: id(600),
        sha256: shown.photograph.sha256,
        width: shown.photograph.width,
        height: shown.photograph.height,
      },
      ...{ region: { x, y, width, height, turn: Number(row.turn) }, pixelsPerMm: Number(row.pixels_per_mm) },
      ...{ shows, licence, credit, impression: null },
    },
  };
}

/** A mark of the file laid over a reference by what is seen on both, as the app does it. */
async function compared(own: Taken, to: Awaited<ReturnType<typeof reference>>): Promise<MarkReference> {
  const [place] = await proposeRegions(own.bytes);
  const region = place ? framed(place.region, own.photograph) : wholeOf(own.photograph);
  const alignment = await alignPhotographs(
    { photograph: own.bytes, region },
    { photograph: to.bytes, region: to.photograph.region },
  );
  return { photograph: to.photograph, laid: { own: own.photograph.sha256, region, alignment } };
}

function sourceOf(content: ObjectFile, references: ReportSource["references"] = {}): ReportSource {
  return {
    kept: {
      ...{ id: id(99), owner: { id: id(900), name: "Ottoline Sarn" }, version: 21, hash: hash(33) },
      ...{ updatedAt: new Date("2026-11-20T10:00:00Z"), content },
    },
    entries: [SCHOONER, SHOP],
    ...{ thisYear: THIS_YEAR, references, host: "https://marks.example", language: "en-GB" },
    tables: { rules: hash(44), decoders: hash(45), checklist: hash(46) },
  };
}

const withImages = (
  source: ReportSource,
  all: readonly { photograph: { sha256: string }; bytes: Buffer }[],
) => ({
  source,
  images: new Map(all.map(({ photograph, bytes }) => [photograph.sha256, bytes])),
});

/** The steamer with photographs of it and of its marks; two marks lie over their reference. */
export async function steamerFile(): Promise<ReportFile> {
  const whole = await taken(1, await pictureOfBoat(0));
  const others = [
    await taken(2, await pictureOfBoat(1), "whole", null, "From starboard"),
    await taken(3, await pictureOfBoat(0, 1000, 1200), "whole", null, "From the bow"),
  ];
  const deck = await taken(4, await readFile(demo("try/06.webp")), "mark", id(3), "Deck, daylight");
  const hull = await taken(
    5,
    await readFile(demo("photographs/brandreth-sons-schooner-3.webp")),
    "mark",
    id(4),
    "Hull, raking light",
  );
  const label = await taken(
    6,
    await readFile(demo("photographs/lund-lamp-label-3.webp")),
    "mark",
    id(5),
    "Stern",
  );
  const [schooner, shop] = [
    await reference("brandreth-sons-schooner-1.webp"),
    await reference("lund-lamp-label-1.webp"),
  ];
  const photographs = [whole, ...others, deck, hull, label];
  const references = {
    [id(3)]: await compared(deck, schooner),
    [id(4)]: await compared(hull, schooner),
    [id(5)]: { photograph: shop.photograph, laid: null },
  };
  const content = {
    ...fileOf("tin and wooden toys", ...STEAMER),
    photographs: photographs.map((each) => each.photograph),
  };
  return withImages(sourceOf(content, references), [...photographs, schooner, shop]);
}

/** One photograph and a title. */
export async function poorFile(): Promise<ReportFile> {
  const only = await taken(1, await pictureOfBoat(3));
  const described: Typed = ["describe", { title: "A boat", family: "tin and wooden toys", description: "" }];
  const content = { ...fileOf("tin and wooden toys", described), photographs: [only.photograph] };
  return withImages(sourceOf(content), [only]);
}

const WORDS = "A long sentence about what was seen, told, measured and doubted, of which there is no end. ";
const long = (signs: number) =>
  WORDS.repeat(Math.ceil(signs / WORDS.length))
    .slice(0, signs)
    .trimEnd();
const many = (count: number, typed: (n: number) => Typed): Typed[] =>
  Array.from({ length: count }, (_, i) => typed(i));
const LOOK_UP = { look_up: id(700), model_name: "marks", model_version: "7", probability: "0.93" };

/** As much as a file may hold of everything, each text as long as it may be. */
export async function fullestFile(): Promise<ReportFile> {
  const pictures = await Promise.all([1, 2, 3, 4, 5].map(async (n) => taken(n, await pictureOfBoat(n))));
  const schooner = await reference("brandreth-sons-schooner-1.webp");
  const bytes = await readFile(demo("try/06.webp"));
  const marks = many(MOST.marks, (n) => [
    "mark",
    {
      id: id(1000 + n),
      kind: "mark",
      technique: "printed",
      place: long(LONGEST.line),
      words: long(LONGEST.text),
      description: long(LONGEST.text),
    },
  ]);
  const marked = await Promise.all(
    marks.map((_, n) => taken(200 + n, bytes, "mark", id(1000 + n), long(LONGEST.line))),
  );
  const [first] = marked;
  const laid = first && (await compared(first, schooner));
  const events = many(MOST.events, (n) => [
    "event",
    {
      ...{
        id: id(2000 + n),
        kind: "sold",
        from: `Owner ${n}`,
        to: `Owner ${n + 1}`,
        when: `${1925 + Math.floor(n / 3)}`,
      },
      ...{
        told: long(LONGEST.text),
        place: long(LONGEST.line),
        gap_before: n % 3 === 0 ? "on" : "",
        documents: id(3000 + (n % 90)),
      },
    },
  ]);
  const documents = many(MOST.documents, (n) => [
    "document",
    {
      ...{ id: id(3000 + n), kind: "letter", title: long(LONGEST.line), when: "1979-02" },
      ...{
        transcription: long(LONGEST.transcription),
        vouched_by: long(LONGEST.line),
        kept_at: long(LONGEST.line),
      },
    },
  ]);
  const anomalies = many(MOST.anomalies, (n) => [
    "anomaly",
    {
      ...{ id: id(4000 + n), says: long(LONGEST.text) },
      ...Object.fromEntries(
        Array.from({ length: MOST.explanations }, (_, k) => k + 1).flatMap((k) => [
          [`explanation-${k}-id`, id(5000 + 20 * n + k)],
          [`explanation-${k}-says`, long(LONGEST.line)],
          [`explanation-${k}-for`, long(LONGEST.text)],
          [`explanation-${k}-against`, long(LONGEST.text)],
        ]),
      ),
    },
  ]);
  const content = fileOf(
    "tin and wooden toys",
    [
      "describe",
      { title: long(LONGEST.line), family: "tin and wooden toys", description: long(LONGEST.text) },
    ],
    [
      "line",
      {
        name: long(LONGEST.line),
        sizes: "24, 32",
        unit: "cm",
        when: "1920/1928",
        source: long(LONGEST.line),
      },
    ],
    ...marks,
    ...marks.map((_, n) => pin(1000 + n, n % 2 === 0 ? SCHOONER : SHOP, LOOK_UP)),
    ...many(MOST.measurements, (n) => [
      "measurement",
      {
        id: id(6000 + n),
        measured: "length",
        amount: `${20 + n}`,
        unit: "cm",
        part: long(LONGEST.line),
        note: long(LONGEST.text),
      },
    ]),
    ...many(MOST.observations, (n) => [
      "observation",
      {
        id: id(7000 + n),
        observed: "seen",
        what: `${n} ${long(LONGEST.line - 10)}`,
        value: long(LONGEST.text),
        note: long(LONGEST.text),
      },
    ]),
    ...many(MOST.conditions, (n) => [
      "condition",
      { id: id(8000 + n), condition: "worn", place: long(LONGEST.line), note: long(LONGEST.text) },
    ]),
    ...documents,
    ...events,
    ...anomalies,
    [
      "finding",
      {
        ...{
          rung: "attributed to",
          maker: long(LONGEST.line),
          says: long(LONGEST.text),
          doubts: long(LONGEST.text),
        },
        ...{ own_date: "1921", own_date_reasons: long(LONGEST.text) },
      },
    ],
  );
  const absent = Array.from(
    { length: MOST.photographs - pictures.length - marked.length },
    (_, n): FilePhotograph => ({
      ...{
        id: id(9000 + n),
        sha256: hash(9000 + n),
        width: 1600,
        height: 1200,
        shows: "",
        credit: "",
        of: "whole",
        item: null,
      },
    }),
  );
  const photographs = [...pictures, ...marked].map((each) => each.photograph);
  const references = laid ? Object.fromEntries(marks.map((_, n) => [id(1000 + n), laid])) : {};
  return withImages(sourceOf({ ...content, photographs: [...photographs, ...absent] }, references), [
    ...pictures,
    ...marked,
    schooner,
  ]);
}
