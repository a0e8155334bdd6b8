import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { ENTRY_STATES } from "#core/entries/vocabulary";
import { StateSign } from "#ui/state-sign";
import { lookUpDays } from "#web/reading";
import styles from "./about.module.css";

const LIKENESS = ["is", "words", "not", "none", "turn", "known"] as const;
const CAUTIONS = ["toys", "celluloid", "lead", "arsenic", "ivory", "export", "money"] as const;
const PRIVACY = ["kept", "location", "cookie", "link"] as const;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("about");
  return { title: t("title") };
}

export default async function AboutPage() {
  const [t, meaning, days] = await Promise.all([
    getTranslations("about"),
    getTranslations("stateMeaning"),
    lookUpDays(),
  ]);
  return (
    <article className={styles.about}>
      <h1>{t("title")}</h1>
      <p className={styles.lede}>{t("lede")}</p>

      <section aria-labelledby="likeness">
        <h2 id="likeness">{t("likeness.heading")}</h2>
        {LIKENESS.map((key) => (
          <p key={key}>{t(`likeness.${key}`)}</p>
        ))}
        <p>{t.rich("likeness.more", { link: (words) => <Link href="/how-sure">{words}</Link> })}</p>
      </section>

      <section aria-labelledby="verified">
        <h2 id="verified">{t("verified.heading")}</h2>
        <p>{t("verified.words")}</p>
        <dl className={styles.states}>
          {ENTRY_STATES.map((state) => (
            <div key={state}>
              <dt>
                <StateSign state={state} />
              </dt>
              <dd>{meaning(state)}</dd>
            </div>
          ))}
        </dl>
      </section>

      <section aria-labelledby="objects">
        <h2 id="objects">{t("objects.heading")}</h2>
        <p>{t.rich("objects.words", { link: (words) => <Link href="/objects">{words}</Link> })}</p>
      </section>

      <section aria-labelledby="cautions">
        <h2 id="cautions">{t("cautions.heading")}</h2>
        <p>{t("cautions.words")}</p>
        <ul className={styles.list}>
          {CAUTIONS.map((key) => (
            <li key={key}>{t(`cautions.${key}`)}</li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="privacy">
        <h2 id="privacy">{t("privacy.heading")}</h2>
        <ul className={styles.list}>
          {PRIVACY.map((key) => (
            <li key={key}>{t(`privacy.${key}`, { days })}</li>
          ))}
        </ul>
      </section>

      <section aria-labelledby="credits">
        <h2 id="credits">{t("credits.heading")}</h2>
        <p>{t("credits.photographs")}</p>
        <p>{t("credits.software")}</p>
        <p>{t("credits.type")}</p>
      </section>
    </article>
  );
}
