import { useTranslations } from "next-intl";
import type { MakerView } from "#core/entries/maker";
import { EntryLine } from "../entry-line.tsx";

/** The maker's marks, by the first year of their use, with their photographs. */
export function MakerMarks({ view }: { readonly view: MakerView }) {
  const t = useTranslations("makers");
  return (
    <section aria-labelledby="marks">
      <h2 id="marks">{t("marks", { count: view.entries.length })}</h2>
      {view.entries.length === 0 ? (
        <p>{t("noMarks")}</p>
      ) : (
        <ol>
          {view.entries.map((entry) => (
            <li key={entry.slug}>
              <EntryLine entry={entry} withMaker={false} />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
