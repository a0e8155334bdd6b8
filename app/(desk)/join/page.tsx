import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { nextPath } from "#core/members/next-path";
import { JoinForm } from "#ui/members/join-form";
import { keptForm } from "#web/reading-members";
import styles from "../../_ui/members/members.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("join");
  return { title: t("title"), robots: { index: false } };
}

export default async function JoinPage({ searchParams }: Props) {
  const [{ next, form: name }, t] = await Promise.all([searchParams, getTranslations("join")]);
  return (
    <div className={styles.narrow}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      <JoinForm
        form={keptForm(name) ?? { typed: {}, errors: [] }}
        next={nextPath(typeof next === "string" ? next : undefined)}
      />
    </div>
  );
}
