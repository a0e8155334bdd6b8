import Link from "next/link";
import { useTranslations } from "next-intl";
import { addressOf, type Worksheet } from "#core/dating/worksheet";
import { carriedFields } from "./asked.ts";

/** The way back to a worksheet that was carried here; to a new one for whoever brought none. */
export function BackToWorksheet({ worksheet }: { readonly worksheet: Worksheet }) {
  const t = useTranslations("decoders");
  const isNew = carriedFields(worksheet).length === 0;
  return (
    <Link href={isNew ? "/dates" : addressOf(worksheet)}>
      {isNew ? t("worksheet") : t("backToWorksheet")}
    </Link>
  );
}
