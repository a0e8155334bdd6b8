import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { typedOf } from "#core/look-ups/knowledge";
import { Bench } from "#ui/look-up/bench";
import { PlainCropping } from "#ui/look-up/plain-cropping";
import { materials, showLookUp } from "#web/reading";
import styles from "./again.module.css";

type Props = { readonly params: Promise<{ readonly id: string }> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("again");
  return { title: t("title"), robots: { index: false } };
}

export default async function CropAgainPage({ params }: Props) {
  const { id } = await params;
  const [found, t, offered] = await Promise.all([showLookUp(id), getTranslations("again"), materials()]);
  if (!found?.mine) notFound();
  return (
    <>
      <p>
        <Link href={`/look-ups/${id}`}>{t("back")}</Link>
      </p>
      <h1 className={styles.title}>{t("title")}</h1>
      <div className={styles.scripted}>
        <Bench looked={found.view.photographs} typed={typedOf(found.view.asked)} materials={offered} />
      </div>
      <noscript>
        <PlainCropping photographs={found.view.photographs} />
      </noscript>
    </>
  );
}
