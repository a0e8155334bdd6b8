import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { ObjectLine } from "#ui/objects/object-line";
import { actorWhoMay } from "#web/actor";
import { objectFilesOf } from "#web/object-files/reading";
import styles from "../../_ui/objects/objects.module.css";
import plain from "../../_ui/plain.module.css";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("title"), robots: { index: false } };
}

/** A member's object files, and those that others let them into. */
export default async function ObjectsPage() {
  const member = await actorWhoMay("keep an object file", "/objects");
  const [lines, t] = await Promise.all([objectFilesOf(member.id), getTranslations("objectPages")]);
  const mine = lines.filter(({ access }) => access === "owner");
  const invited = lines.filter(({ access }) => access !== "owner");
  return (
    <>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p className={plain.lede}>{t("lede")}</p>
        <p>
          <Link href="/objects/new" className={plain.button}>
            {t("open")}
          </Link>
        </p>
      </header>
      <div className={styles.body}>
        <section aria-labelledby="mine">
          <h2 id="mine">{t("mine")}</h2>
          {mine.length === 0 && <p>{t("none")}</p>}
          <ul className={styles.list}>
            {mine.map((line) => (
              <li key={line.id}>
                <ObjectLine line={line} />
              </li>
            ))}
          </ul>
        </section>
        <section aria-labelledby="invited">
          <h2 id="invited">{t("invited")}</h2>
          {invited.length === 0 && <p>{t("noneInvited")}</p>}
          <ul className={styles.list}>
            {invited.map((line) => (
              <li key={line.id}>
                <ObjectLine line={line} />
              </li>
            ))}
          </ul>
        </section>
      </div>
    </>
  );
}
