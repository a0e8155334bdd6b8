import Link from "next/link";
import { useTranslations } from "next-intl";
import { type Asked, addressOf } from "./asked.tsx";
import styles from "./browse.module.css";

type PagingProps = { readonly page: number; readonly pages: number; readonly asked: Asked };

/** One page back, one page on, and where one is. */
export function Paging({ page, pages, asked }: PagingProps) {
  const t = useTranslations("browse");
  if (pages <= 1) return null;
  const to = (next: number) => addressOf(asked, next === 1 ? {} : { page: String(next) });
  return (
    <nav className={styles.paging} aria-label={t("paging")}>
      {page > 1 ? (
        <Link href={to(page - 1)} rel="prev">
          {t("previous")}
        </Link>
      ) : (
        <span />
      )}
      <span>{t("pageOf", { page, pages })}</span>
      {page < pages ? (
        <Link href={to(page + 1)} rel="next">
          {t("next")}
        </Link>
      ) : (
        <span />
      )}
    </nav>
  );
}
