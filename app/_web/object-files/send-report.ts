import { PAPERS, type Paper, type Report } from "#core/object-files/report/blocks";
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

async function makePdf(source: ReportSource, report: Report<string>, paper: Paper, page: Foot) {
  const { reports } = await live();
  const images = await reportImages(source);
  const shown = report.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.is === "photographs" ? block.photographs : [])),
  );
  const used = new Map([...images].filter(([sha256]) => shown.some((each) => each.sha256 === sha256)));
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
