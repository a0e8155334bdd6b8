import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import styles from "./_ui/plain.module.css";

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("notFound");
  return { title: t("heading") };
}

export default async function NotFound() {
  const t = await getTranslations("notFound");
  return (
    <div className={styles.message}>
      <h1>{t("heading")}</h1>
      <p>{t("words")}</p>
      <ul>
        <li>
          <Link href="/">{t("lookUp")}</Link>
        </li>
        <li>
          <Link href="/entries">{t("entries")}</Link>
        </li>
        <li>
          <Link href="/makers">{t("makers")}</Link>
        </li>
      </ul>
    </div>
  );
}
