import Link from "next/link";
import { useTranslations } from "next-intl";
import type { FileLine } from "#core/object-files/kept-file";
import type { Family } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import { When } from "../review/when.tsx";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./objects.module.css";

/** Object files, each with its first photograph. */
export function ObjectLines({ lines }: { readonly lines: readonly FileLine[] }) {
  return (
    <ul className={styles.list}>
      {lines.map((line) => (
        <li key={line.id}>
          <ObjectLine line={line} />
        </li>
      ))}
    </ul>
  );
}

function ObjectLine({ line }: { readonly line: FileLine }) {
  const t = useTranslations("objectPages");
  const href = `/objects/${line.id}`;
  return (
    <div className={styles.line}>
      <Link href={href} className={styles.mat} tabIndex={-1} aria-hidden="true">
        {line.image ? <ObjectPhoto image={line.image} alt="" shownAt={320} /> : t("noPhotograph")}
      </Link>
      <div className={styles.words}>
        <h3>
          <Link href={href}>{line.title}</Link>
        </h3>
        <p>{t(`families.${line.family as Family}`)}</p>
        {line.access !== "owner" && (
          <p className={plain.note}>
            {t("ownerIs", { name: line.owner.name })}{" "}
            {(!line.published || line.access === "edit") && t(`access.${line.access}`)}
          </p>
        )}
        <p className={plain.note}>
          {t.rich("changed", { when: () => <When at={line.updatedAt.toISOString()} /> })}
          {line.published && <> · {t("isPublished")}</>}
        </p>
      </div>
    </div>
  );
}
