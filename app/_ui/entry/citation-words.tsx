import { useTranslations } from "next-intl";
import type { Citation } from "#core/entries/citation";

/** A citation as one prints it: author, title, year, the place in it; a web page with its address and the day seen. */
export function CitationWords({ citation }: { readonly citation: Citation }) {
  const t = useTranslations("entry");
  const { author, title, year, place, address, seen } = citation;
  const after = [year && `(${year})`, place].filter((part) => part !== "").join(", ");
  return (
    <>
      {author}, <cite>{title}</cite>
      {after && ` ${after}`}
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
