import Link from "next/link";
import { useTranslations } from "next-intl";
import styles from "./reading-answers.module.css";

/** How an answer is to be read, and what it is not. */
export function ReadingAnswers() {
  const t = useTranslations("reading");
  return (
    <section className={styles.reading} aria-labelledby="reading">
      <h2 id="reading">{t("heading")}</h2>
      <dl>
        {(["likeness", "none", "verified"] as const).map((key) => (
          <div key={key}>
            <dt>{t(`${key}.term`)}</dt>
            <dd>{t(`${key}.words`)}</dd>
          </div>
        ))}
      </dl>
      <p>
        <Link href="/about">{t("more")}</Link>
      </p>
    </section>
  );
}
