import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { FieldErrorNote } from "#ui/field-error";
import { Bench } from "#ui/look-up/bench";
import { materials, readRefusal } from "#web/reading";
import { refusalOf } from "../../_ui/look-up/refusal.ts";
import styles from "./refused.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("refused");
  return { title: t("title"), robots: { index: false } };
}

/** Where a look-up sent without scripts ends when a rule refuses it. */
export default async function LookUpRefusedPage({ searchParams }: Props) {
  const params = await searchParams;
  const error = refusalOf(params);
  if (!error) redirect("/");
  const [t, offered] = await Promise.all([getTranslations("refused"), materials()]);
  return (
    <div className={styles.refused}>
      <h1>{t("title")}</h1>
      <FieldErrorNote error={error} />
      <p>{t("again")}</p>
      <Bench materials={offered} typed={readRefusal(params)?.typed} />
    </div>
  );
}
