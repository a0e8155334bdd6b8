import type { Estimate } from "#core/dating/estimate";
import type { Evidence } from "#core/dating/evidence";
import type { ObjectFile } from "#core/object-files/object-file";
import type { Report } from "#core/object-files/report/blocks";
import { DateChart } from "../dating/date-chart.tsx";
import { ProvenanceTime } from "./provenance-time.tsx";
import { ReportPage } from "./report-page.tsx";

type FileReportProps = {
  readonly report: Report<string>;
  readonly content: ObjectFile;
  readonly estimate: Estimate;
  readonly evidence: readonly Evidence[];
  readonly base: string;
  readonly images: string;
  /** Marks are still being laid over their references. */
  readonly isWaiting: boolean;
};

/** The report on a file, with the charts that the file's pages draw. */
export function FileReport({
  report,
  content,
  estimate,
  evidence,
  base,
  images,
  isWaiting,
}: FileReportProps) {
  const labels = Object.fromEntries(evidence.map(({ id, reason }) => [id, reason]));
  const charts = {
    dates: <DateChart {...{ estimate, evidence, labels }} brief />,
    provenance: <ProvenanceTime {...{ content, estimate }} />,
  };
  return <ReportPage {...{ report, base, images, charts, isWaiting }} />;
}
