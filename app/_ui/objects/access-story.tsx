import { useTranslations } from "next-intl";
import type { AccessEvent } from "#core/object-files/kept-file";
import { When } from "../review/when.tsx";
import styles from "./objects.module.css";

/** Who was let in and shut out, the latest first. */
export function AccessStory({ accesses }: { readonly accesses: readonly AccessEvent[] }) {
  const t = useTranslations("objectPages.sharing");
  if (accesses.length === 0) return null;
  return (
    <section aria-labelledby="story">
      <h2 id="story">{t("story")}</h2>
      <ol className={styles.states}>
        {accesses.map(({ type, member, at, by }) => (
          <li key={`${at.toISOString()} ${type}`}>
            {t(`events.${type}`, { member: member?.name ?? "", by: by.name })}
            <span>
              <When at={at.toISOString()} />
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
