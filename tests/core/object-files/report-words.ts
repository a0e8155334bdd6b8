import { createFormatter, createTranslator } from "next-intl";
import { reportOf } from "#core/object-files/report";
import type { Report } from "#core/object-files/report/blocks";
import type { ReportSource } from "#core/object-files/report/parts";
import type { Room } from "#core/object-files/report/room";
import { wordReport } from "../../../app/_ui/objects/word-report.ts";
import messages from "../../../messages/en.json" with { type: "json" };

/** A report in English, as page and PDF say it; a message that is missing is an error of the test. */
export function wordedIn(source: ReportSource): (room?: Room) => Report<string> {
  const onError = (error: Error) => {
    throw error;
  };
  const t = createTranslator({ locale: "en-GB", messages, onError });
  const period = createTranslator({ locale: "en-GB", messages, namespace: "period", onError });
  const format = createFormatter({ locale: "en-GB", timeZone: "UTC" });
  const report = reportOf(source);
  return (room) => wordReport(report(room), t as never, period as never, format);
}

export const wordedReport = (source: ReportSource): Report<string> => wordedIn(source)();
