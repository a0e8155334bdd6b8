import Link from "next/link";
import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import find from "../questions/form.module.css";

type MembersSearchProps = { readonly path: string; readonly words: string };

/** Looks for members by a part of their names. */
export function MembersSearch({ path, words }: MembersSearchProps) {
  const t = useTranslations("members");
  return (
    <search>
      <form action={path} className={find.find}>
        <div className={plain.field}>
          <label htmlFor="member-words">{t("words")}</label>
          <input className={plain.input} id="member-words" name="words" type="search" defaultValue={words} />
        </div>
        <button type="submit" className={plain.quiet}>
          {t("search")}
        </button>
      </form>
    </search>
  );
}

type MembersPagingProps = MembersSearchProps & { readonly page: number; readonly more: boolean };

/** One page back and one on. */
export function MembersPaging({ path, words, page, more }: MembersPagingProps) {
  const t = useTranslations("members");
  if (page === 1 && !more) return null;
  const to = (number: number) => `${path}?${new URLSearchParams({ words, page: String(number) })}`;
  return (
    <nav aria-label={t("pages")} className={find.buttons}>
      {page > 1 && (
        <Link href={to(page - 1)} rel="prev">
          {t("newer")}
        </Link>
      )}
      {more && (
        <Link href={to(page + 1)} rel="next">
          {t("older")}
        </Link>
      )}
    </nav>
  );
}
