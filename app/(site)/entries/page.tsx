import type { Metadata } from "next";
import { getFormatter, getTranslations } from "next-intl/server";
import { type Asked, askedOf } from "#ui/browse/asked";
import { BrowseForm } from "#ui/browse/browse-form";
import { Facets } from "#ui/browse/facets";
import { LeftOut } from "#ui/browse/left-out";
import { NothingFound } from "#ui/browse/nothing-found";
import { Paging } from "#ui/browse/paging";
import { PastTheEnd } from "#ui/browse/past-the-end";
import { EntryLine } from "#ui/entry-line";
import { parseEntryQuery, searchEntries } from "#web/reading";
import styles from "./entries.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("browse");
  return { title: t("title") };
}

export default async function EntriesPage({ searchParams }: Props) {
  const params = await searchParams;
  const { query, errors } = parseEntryQuery(params);
  const asked: Asked = askedOf(params);
  const [found, t, format] = await Promise.all([
    searchEntries(query),
    getTranslations("browse"),
    getFormatter(),
  ]);
  return (
    <>
      <h1>{t("title")}</h1>
      <div className={styles.browse}>
        <div className={styles.narrow}>
          <BrowseForm asked={asked} errors={errors} />
          <Facets facets={found.facets} asked={asked} />
        </div>
        <section className={styles.found} aria-labelledby="found">
          <h2 id="found" className={styles.total}>
            {t("total", { count: found.total, shown: format.number(found.total) })}
          </h2>
          <LeftOut errors={errors} asked={asked} />
          {found.total > 0 && found.page > found.pages ? (
            <PastTheEnd pages={found.pages} asked={asked} />
          ) : found.entries.length === 0 ? (
            <NothingFound />
          ) : (
            <ol>
              {found.entries.map((entry, i) => (
                <li key={entry.slug}>
                  <EntryLine entry={entry} eager={i < 3} />
                </li>
              ))}
            </ol>
          )}
          {found.page <= found.pages && <Paging page={found.page} pages={found.pages} asked={asked} />}
        </section>
      </div>
    </>
  );
}
