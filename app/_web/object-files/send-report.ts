import { PAPERS, type Paper, type Report } from "#core/object-files/report/blocks";
import { linkedArtOf } from "#core/object-files/report/linked-art";
import type { ReportSource } from "#core/object-files/report/parts";
import { live } from "../live.ts";
import { reportImages } from "./report-source.ts";

type Foot = (page: number, of: number) => string;

/** The report as a PDF; A4 unless another paper is asked for. */
export async function sendReportPdf(
  request: Request,
  source: ReportSource,
  report: Report<string>,
  foot: Foot,
): Promise<Response> {
  const asked = new URL(request.url).searchParams.get("paper") ?? "a4";
  const paper = PAPERS.find((each) => each === asked);
  if (!paper) return new Response(null, { status: 404 });
  const bytes = await makePdf(source, report, paper, foot);
  return sendFile(bytes, "application/pdf", `report-${paper}.pdf`, "inline");
}

/** The file as Linked Art. @param base where the file is read */
export function sendReportJsonLd(source: ReportSource, base: string): Response {
  return sendFile(linkedArt(source, base), "application/ld+json", "report.jsonld", "attachment");
}

/** Everything in one archive: report, file, photographs and scans, with their SHA-256 sums. */
export async function sendReportZip(
  source: ReportSource,
  base: string,
  report: Report<string>,
  foot: Foot,
): Promise<Response> {
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
    { path: "report.pdf", bytes: await makePdf(source, report, "a4", foot) },
    { path: "report.jsonld", bytes: linkedArt(source, base) },
    { path: "file.json", bytes: textBytes(content) },
    ...kept("photographs", content.photographs),
    ...kept("documents", scans),
  ]);
  return sendFile(bytes, "application/zip", "report.zip", "attachment");
}

const textBytes = (value: unknown) => new TextEncoder().encode(`${JSON.stringify(value, null, 2)}\n`);
const linkedArt = (source: ReportSource, base: string) => textBytes(linkedArtOf(source, base));
const extensionOf = (type: string) => (type === "image/jpeg" ? "jpg" : (type.split("/")[1] ?? "bin"));

async function makePdf(source: ReportSource, report: Report<string>, paper: Paper, page: Foot) {
  const { reports } = await live();
  const images = await reportImages(source);
  const shown = report.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.is === "photographs" ? block.photographs : [])),
  );
  const used = new Map(
    shown.flatMap(({ sha256 }): [string, Uint8Array][] => {
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
