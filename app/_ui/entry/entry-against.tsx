import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import { Facts } from "./facts.tsx";

/** What speaks against it: what it may be confused with, what was copied, what imitates it. */
export function EntryAgainst({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const { content } = view;
  const doubles = view.relations.filter(({ kind }) => kind === "variant of" || kind === "imitated by");
  const nothing = content.distinguish === "" && content.reproductions === "" && doubles.length === 0;
  return (
    <section aria-labelledby="against">
      <h2 id="against">{t("against")}</h2>
      {nothing && <p>{t("nothingAgainst")}</p>}
      <Facts
        facts={[
          [t("distinguish"), content.distinguish],
          [t("reproductions"), content.reproductions],
          ...doubles.map(
            ({ kind, entry }) =>
              [
                t(`relations.${kind}`),
                <Link key={entry.slug} href={`/entries/${entry.slug}`}>
                  {entry.title}
                </Link>,
              ] as const,
          ),
        ]}
      />
    </section>
  );
}
