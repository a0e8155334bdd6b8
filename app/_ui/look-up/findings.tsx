import { useFormatter, useTranslations } from "next-intl";
import type { Knowledge } from "#core/look-ups/knowledge";
import type { LookUpMatch } from "#core/look-ups/look-up";
import type { Finding } from "#core/similarity/findings";
import { sizeWords } from "../size-words.ts";
import styles from "./known.module.css";

type FindingsProps = { readonly asked: Knowledge; readonly match: LookUpMatch };

/** What is known besides the photograph that agrees with an entry, and what speaks against it, each a line. */
export function Findings({ asked, match }: FindingsProps) {
  const t = useTranslations("findings");
  const say = useFindingWords(asked);
  const lines = (stands: Finding["stands"]) =>
    match.findings
      .filter((each) => each.stands === stands)
      .map(say)
      .join("; ");
  const [agrees, against] = [lines("for"), lines("against")];
  const alike = match.likeness === "very close" || match.likeness === "close";
  if (agrees === "" && against === "") return null;
  return (
    <ul className={styles.findings}>
      {agrees !== "" && (
        <li>
          <Sign drawing="m3 9.500 4 4 8-9" />
          <span>{t("agrees", { what: agrees })}</span>
        </li>
      )}
      {against !== "" && (
        <li>
          <Sign drawing="M3.500 9.500h11" />
          <span>{t(alike ? "butFor" : "against", { what: against })}</span>
        </li>
      )}
    </ul>
  );
}

/** Says one finding: what the entry records and, where they differ, what was known instead. */
function useFindingWords(asked: Knowledge): (finding: Finding) => string {
  const t = useTranslations();
  const format = useFormatter();
  return (finding) => {
    const way = finding.stands;
    switch (finding.aspect) {
      case "letters": {
        const { recorded, degree, differences } = finding;
        return t(`findings.letters.${degree}`, { recorded, asked: asked.letters, differences });
      }
      case "size": {
        const size = { width: asked.widthMm, height: asked.heightMm };
        return t(`findings.size.${way}`, {
          recorded: t("known.size", sizeWords(finding.recorded, format.number)),
          asked: t("known.size", sizeWords(size, format.number)),
        });
      }
      case "technique":
        return t(`findings.technique.${way}`, {
          recorded: t(`techniques.${finding.recorded}`),
          asked: asked.technique ? t(`techniques.${asked.technique}`) : "",
        });
      case "material":
        return t(`findings.material.${way}`, { recorded: finding.recorded, asked: asked.material });
      case "kind":
        return t(`findings.kind.${way}`, {
          recorded: t(`kinds.${finding.recorded}`).toLowerCase(),
          asked: asked.kind ? t(`kinds.${asked.kind}`).toLowerCase() : "",
        });
    }
  };
}

function Sign({ drawing }: { readonly drawing: string }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false">
      <path d={drawing} fill="none" stroke="currentColor" strokeWidth="1.700" strokeLinecap="round" />
    </svg>
  );
}
