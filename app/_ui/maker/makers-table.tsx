import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { MakerSummary } from "#core/entries/maker";
import { axisOver } from "../time/axis.ts";
import { TimeLine } from "../time/time-line.tsx";

/** Every maker with its years of activity on one axis. */
export function MakersTable({ makers }: { readonly makers: readonly MakerSummary[] }) {
  const t = useTranslations("makers");
  const format = useFormatter();
  const axis = axisOver(makers.map(({ active }) => active));
  const rows = makers.map((maker) => ({
    key: maker.slug,
    label: <Link href={`/makers/${maker.slug}`}>{maker.name}</Link>,
    note: [
      maker.place,
      format.list(maker.trades, { type: "unit" }),
      t("entries", { count: maker.entryCount }),
    ]
      .filter((part) => part !== "")
      .join(" · "),
    period: maker.active,
  }));
  return <TimeLine rows={rows} axis={axis} caption={t("tableCaption")} />;
}
