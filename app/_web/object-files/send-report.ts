import { PAPERS, type Paper, photographsOf, type Report } from "#core/object-files/report/blocks";
import { transcriptionPath } from "#core/object-files/report/kept-sections";
import { type LinkedArtSource, linkedArtOf } from "#core/object-files/report/linked-art";
import type { ReportSource } from "#core/object-files/report/parts";
import { ROOMS, type Room } from "#core/object-files/report/room";
import { live } from "../live.ts";
import { reportImages } from "./report-source.ts";

/** The report in words, and what stands at the foot of its pages. */
type Words = {
  readonly report: (room: Room) => Report<string>;
  readonly page: (page: number, of: number) => string;
};

/** The report as a PDF; A4 unless another paper is asked for. */
export async function sendReportPdf(request: Request, source: ReportSource, words: Words): Promise<Response> {
  const asked = new URL(request.url).searchParams.get("paper") ?? "a4";
  const paper = PAPERS.find((each) => each === asked);
  if (!paper) return new Response(null, { status: 404 });
  const bytes = await makePdf(source, words, paper);
  return sendFile(bytes, "application/pdf", `report-${paper}.pdf`, "inline");
}

/** The file as Linked Art. @param base where the file is read */
export function sendReportJsonLd(source: LinkedArtSource, base: string): Response {
  return sendFile(linkedArt(source, base), "application/ld+json", "report.jsonld", "attachment");
}

/** Everything in one archive: report, file, photographs, scans and transcriptions, with their SHA-256 sums. */
export async function sendReportZip(source: ReportSource, base: string, words: Words): Promise<Response> {
  const { reports } = await live();
  const images = await reportImages(source);
  const { content } = source.kept;
  const scans = content.documents.flatMap((document) => document.scans);
  const kept = (folder: string, all: readonly { readonly sha256: string }[]) =>
    all.flatMap(({ sha256 }, i) => {
      const image = images.get(sha256);
      const name = `${folder}/${String(i + 1).padStart(3, "0")}-${sha256.slice(0, 12)}`;
      return image ? [{ path: `${name}.${extensionOf(image.type)}`, bytes: image.bytes }] : [];
    });
  const bytes = await reports.archive([
    { path: "report.pdf", bytes: await makePdf(source, words, "a4") },
    { path: "report.jsonld", bytes: linkedArt(source, base) },
    { path: "file.json", bytes: textBytes(`${JSON.stringify(content, null, 2)}\n`) },
    ...kept("photographs", content.photographs),
    ...kept("documents", scans),
    ...content.documents.flatMap(({ transcription }, i) =>
      transcription === "" ? [] : [{ path: transcriptionPath(i), bytes: textBytes(`${transcription}\n`) }],
    ),
  ]);
  return sendFile(bytes, "application/zip", "report.zip", "attachment");
}

const textBytes = (text: string) => new TextEncoder().encode(text);
const linkedArt = (source: LinkedArtSource, base: string) =>
  textBytes(`${JSON.stringify(linkedArtOf(source, base), null, 2)}\n`);
const extensionOf = (type: string) => (type === "image/jpeg" ? "jpg" : (type.split("/")[1] ?? "bin"));

async function makePdf(source: ReportSource, { report, page }: Words, paper: Paper): Promise<Uint8Array> {
  const { reports } = await live();
  const images = await reportImages(source);
  const used = new Map(
    photographsOf(report(ROOMS[0])).flatMap(({ sha256 }): [string, Uint8Array][] => {
      const image = images.get(sha256);
      return image ? [[sha256, image.bytes]] : [];
    }),
  );
  return reports.pdf(report, used, paper, { page });
}

function sendFile(bytes: Uint8Array, type: string, name: string, as: "inline" | "attachment"): Response {
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": type,
      "content-disposition": `${as}; filename="${name}"`,
      "cache-control": "private, no-cache",
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "x-robots-tag": "noindex",
    },
  });
}
