import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { FieldErrorNote } from "#ui/field-error";
import { Bench } from "#ui/look-up/bench";
import styles from "./refused.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("refused");
  return { title: t("title"), robots: { index: false } };
}

/** Where a look-up sent without scripts ends when a rule refuses it. */
export default async function LookUpRefusedPage({ searchParams }: Props) {
  const t = await getTranslations("refused");
  const { rule = "unexpected", field = "photograph", received = "", ...rest } = firstOf(await searchParams);
  const params = Object.fromEntries(
    Object.entries(rest).map(([name, value]) => [name.replace(/^param-/, ""), value]),
  );
  const error = { rule, field, received, params };
  return (
    <div className={styles.refused}>
      <h1>{t("title")}</h1>
      <FieldErrorNote error={error} />
      <p>{t("again")}</p>
      <Bench />
    </div>
  );
}

function firstOf(params: Awaited<Props["searchParams"]>): Record<string, string> {
  const first = ([key, value]: [string, string | string[] | undefined]) => [
    key,
    Array.isArray(value) ? value[0] : value,
  ];
  return Object.fromEntries(
    Object.entries(params)
      .map(first)
      .filter(([, value]) => value !== undefined),
  );
}
