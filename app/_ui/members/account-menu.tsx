import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Actor } from "#core/members/member";
import { may } from "#core/permissions";
import plain from "../plain.module.css";
import styles from "./account-menu.module.css";

/** Who is signed in, with what only they are led to; or the way to sign in. */
export function AccountMenu({ who }: { readonly who: Actor }) {
  const t = useTranslations("accountMenu");
  return (
    <nav className={styles.menu} aria-label={t("label")}>
      <Link href="/review">{t("review")}</Link>
      <Link href="/members">{t("members")}</Link>
      <Link href="/objects">{t("objects")}</Link>
      {may(who, "write a draft") && <Link href="/contribute">{t("contribute")}</Link>}
      {who.kind === "member" ? (
        <>
          {may(who, "see the log of moderation") && <Link href="/moderation">{t("moderate")}</Link>}
          {may(who, "appoint a reviewer") && <Link href="/moderation/members">{t("moderation")}</Link>}
          <Link href="/account" className={styles.name}>
            {who.name}
          </Link>
          <form method="post" action="/api/sign-out">
            <button type="submit" className={plain.link}>
              {t("signOut")}
            </button>
          </form>
        </>
      ) : (
        // Of no use to a page that is kept: what is there depends on who asks.
        <Link href="/sign-in" prefetch={false}>
          {t("signIn")}
        </Link>
      )}
    </nav>
  );
}
