import Link from "next/link";
import { getFormatter, getTranslations } from "next-intl/server";
import { FieldErrorNote } from "#ui/field-error";
import { Bench } from "#ui/look-up/bench";
import { PhotographsToTry } from "#ui/look-up/photographs-to-try";
import { ReadingAnswers } from "#ui/look-up/reading-answers";
import { Said } from "#ui/said";
import { materials, photographsToTry, preparation, referenceCounts } from "#web/reading";
import styles from "./home.module.css";

/** Changes with what is imported, so it is never made ahead. */
export const dynamic = "force-dynamic";

type Props = { readonly searchParams: Promise<{ readonly said?: string | string[] }> };

export default async function LookUpPage({ searchParams }: Props) {
  const { said } = await searchParams;
  const t = await getTranslations("home");
  const format = await getFormatter();
  const [counts, toTry, preparing, offered] = await Promise.all([
    referenceCounts(),
    photographsToTry(),
    preparation(),
    materials(),
  ]);
  return (
    <>
      {said === "deleted" && <Said>{t("deleted")}</Said>}
      <div className={styles.bench}>
        <div className={styles.words}>
          <h1>{t("what")}</h1>
          <p className={styles.counts}>
            {t("counts", {
              entries: format.number(counts.entries),
              photographs: format.number(counts.photographs),
              makers: format.number(counts.makers),
            })}
          </p>
          <p className={styles.counts}>
            {t.rich("objects", { link: (words) => <Link href="/objects">{words}</Link> })}
          </p>
          {preparing && <FieldErrorNote error={preparing} />}
        </div>
        <Bench materials={offered} />
      </div>
      {toTry.length > 0 && <PhotographsToTry photographs={toTry} />}
      <ReadingAnswers />
    </>
  );
}
