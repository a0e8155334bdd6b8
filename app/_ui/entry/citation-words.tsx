import { useTranslations } from "next-intl";
import type { Citation } from "#core/entries/citation";
import { wordEdtf } from "../word-edtf.ts";

/**
 * A citation as one prints it: author, title, year, the place in it; a web page with its address and the day seen; what
 * it dates. */
export function CitationWords({ citation }: { readonly citation: Citation }) {
  const t = useTranslations("entry");
  const sayings = useTranslations("datedSayings");
  const period = useTranslations("period");
  const { author, title, year, place, address, seen, dated } = citation;
  return (
    <>
      {author}, <cite>{title}</cite>
      {year && ` (${year})`}
      {place && `, ${place}`}
      {address && (
        <>
          ,{" "}
          <a href={address} rel="nofollow noopener ugc">
            {address}
          </a>
        </>
      )}
      {seen && `, ${t("citationSeen", { day: seen })}`}
      {dated && `: ${sayings(`${dated.says} when`, { when: wordEdtf(dated.edtf, period) })}`}
    </>
  );
}
