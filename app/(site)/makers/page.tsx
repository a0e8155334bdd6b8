import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { MakersSearch } from "#ui/maker/makers-search";
import { MakersTable } from "#ui/maker/makers-table";
import { listMakers } from "#web/reading";
import styles from "./makers.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("makers");
  return { title: t("title") };
}

export default async function MakersPage({ searchParams }: Props) {
  const { words: asked } = await searchParams;
  const words = (typeof asked === "string" ? asked : (asked?.[0] ?? "")).trim().slice(0, 200);
  const [makers, t] = await Promise.all([listMakers(words), getTranslations("makers")]);
  return (
    <div className={styles.makers}>
      <h1>{t("title")}</h1>
      <MakersSearch words={words} />
      {makers.length === 0 ? <p>{t("nothing", { words })}</p> : <MakersTable makers={makers} />}
    </div>
  );
}
