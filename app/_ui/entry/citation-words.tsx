import { useTranslations } from "next-intl";
import type { Citation } from "#core/entries/citation";

/** A citation as one prints it: author, title, year, the place in it; a web page with its address and the day seen. */
export function CitationWords({ citation }: { readonly citation: Citation }) {
  const t = useTranslations("entry");
  const { author, title, year, place, address, seen } = citation;
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
    </>
  );
}
