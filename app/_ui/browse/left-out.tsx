import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import { type Asked, addressOf } from "./asked.tsx";
import styles from "./browse.module.css";

type LeftOutProps = { readonly errors: readonly FieldError[]; readonly asked: Asked };

/** What of the search could not be read and so does not narrow the list below; and what may have been meant. */
export function LeftOut({ errors, asked }: LeftOutProps) {
  const t = useTranslations();
  const format = useFormatter();
  if (errors.length === 0) return null;
  const names = errors.map(({ field }) => t(`fields.${field}` as "fields.period"));
  const suggestion = errors.find(({ field }) => field === "period")?.params?.suggestion;
  return (
    <div className={styles.leftOut}>
      <p>{t("browse.leftOut", { count: names.length, names: format.list(names) })}</p>
      {suggestion !== undefined && (
        <p>
          {t.rich("browse.didYouMean", {
            period: String(suggestion),
            link: (words) => <Link href={addressOf(asked, { period: String(suggestion) })}>{words}</Link>,
          })}
        </p>
      )}
    </div>
  );
}
