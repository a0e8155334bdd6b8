import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { OtherErrors } from "#ui/questions/form-field";
import { keptForm } from "#web/reading-members";
import styles from "../../_ui/members/members.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("notAllowed");
  return { title: t("title"), robots: { index: false } };
}

/** Which rule forbids what somebody wanted to do. */
export default async function NotAllowedPage({ searchParams }: Props) {
  const [{ form: name }, t] = await Promise.all([searchParams, getTranslations("notAllowed")]);
  const form = keptForm(name);
  return (
    <div className={styles.narrow}>
      <h1>{t("title")}</h1>
      {form && form.errors.length > 0 ? (
        <>
          <OtherErrors form={form} shown={[]} />
          <p>{t("lede")}</p>
        </>
      ) : (
        <p>{t("unknown")}</p>
      )}
      <p>
        <Link href="/account">{t("back")}</Link>
      </p>
    </div>
  );
}
