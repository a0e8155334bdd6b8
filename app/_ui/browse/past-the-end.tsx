import Link from "next/link";
import { useTranslations } from "next-intl";
import { type Asked, addressOf } from "./asked.tsx";
import styles from "./browse.module.css";

/** A page was asked for that the list does not have: how many there are, and the way to the last. */
export function PastTheEnd({ pages, asked }: { readonly pages: number; readonly asked: Asked }) {
  const t = useTranslations("browse");
  return (
    <div className={styles.nothing}>
      <p>
        {t.rich("pastTheEnd", {
          pages,
          link: (words) => (
            <Link href={addressOf(asked, pages === 1 ? {} : { page: String(pages) })}>{words}</Link>
          ),
        })}
      </p>
    </div>
  );
}
