import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { estimateSize } from "#core/sizes/estimate-size";
import { readSizeForm, SIZE_FIELDS } from "#core/sizes/read-size-form";
import { SizeAnswer } from "#ui/sizes/size-answer";
import { SizeForm } from "#ui/sizes/size-form";
import plain from "../../../_ui/plain.module.css";
import styles from "../../../_ui/worksheet/worksheet.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

const EXAMPLE = "/dates/sizes?sizes=17%2C+22%2C+28&unit=cm&height-standing=16&length=22&making=stuffed";

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("sizesPage");
  return { title: t("title") };
}

/** Catalogued sizes against measured ones; all that was typed is in the address. */
export default async function SizesPage({ searchParams }: Props) {
  const [params, t] = await Promise.all([searchParams, getTranslations("sizesPage")]);
  const typed = Object.fromEntries(SIZE_FIELDS.map((name) => [name, [params[name] ?? ""].flat()[0] ?? ""]));
  const isAsked = (typed.sizes ?? "") !== "";
  const { line, measurements, making, errors } = readSizeForm(typed);
  const isAnswered = isAsked && line.sizes.length > 0;
  return (
    <>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        {!isAsked && <p className={plain.lede}>{t("lede")}</p>}
        <p className={styles.ways}>
          {!isAsked && (
            <a href={EXAMPLE} className={plain.quiet}>
              {t("example")}
            </a>
          )}
          <a href="/dates">{t("back")}</a>
        </p>
      </header>
      {isAnswered && <SizeAnswer estimate={estimateSize(line, measurements, making)} making={making} />}
      <SizeForm typed={typed} errors={errors} />
    </>
  );
}
