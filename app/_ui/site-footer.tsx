import Link from "next/link";
import { useTranslations } from "next-intl";
import plain from "./plain.module.css";
import styles from "./site-footer.module.css";
import type { Theme } from "./theme.ts";
import { ThemeSwitch } from "./theme-switch.tsx";

export function SiteFooter({ theme }: { readonly theme: Theme }) {
  const t = useTranslations("site");
  return (
    <footer className={styles.footer}>
      <div className={styles.row}>
        <p className={plain.note}>
          {t("caution")} <Link href="/about#cautions">{t("cautionMore")}</Link>
        </p>
        <ThemeSwitch initial={theme} />
      </div>
    </footer>
  );
}
