import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Actor } from "#core/members/member";
import { MeasureRule } from "./measure-rule.tsx";
import { AccountMenu } from "./members/account-menu.tsx";
import { NavLinks } from "./nav-links.tsx";
import plain from "./plain.module.css";
import styles from "./site-header.module.css";
import { Wordmark } from "./wordmark.tsx";

export function SiteHeader({ who }: { readonly who: Actor }) {
  const t = useTranslations("site");
  const links = [
    { href: "/", label: t("lookUp") },
    { href: "/entries", label: t("entries") },
    { href: "/makers", label: t("makers") },
    { href: "/dates", label: t("dates") },
    { href: "/questions", label: t("questions") },
    { href: "/about", label: t("about") },
  ];
  return (
    <header className={styles.header}>
      <div className={styles.row}>
        <Link href="/" className={styles.name}>
          <Wordmark />
          {t("name")}
        </Link>
        <nav aria-label={t("mainNavigation")}>
          <NavLinks links={links} className={styles.links} />
        </nav>
        <search className={styles.search}>
          <form action="/entries">
            <label htmlFor="header-words" className={plain.hidden}>
              {t("searchLabel")}
            </label>
            <input id="header-words" name="words" type="search" placeholder={t("searchPlaceholder")} />
            <button type="submit">
              <span className={plain.hidden}>{t("search")}</span>
              <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
                <circle cx="7.5" cy="7.5" r="5" fill="none" stroke="currentColor" strokeWidth="1.5" />
                <path d="m11.2 11.2 5 5" stroke="currentColor" strokeWidth="1.5" />
              </svg>
            </button>
          </form>
        </search>
        <AccountMenu who={who} />
      </div>
      <MeasureRule />
    </header>
  );
}
