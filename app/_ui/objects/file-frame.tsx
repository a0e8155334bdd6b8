import Link from "next/link";
import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { Access, KeptFile } from "#core/object-files/kept-file";
import plain from "../plain.module.css";
import { type FormState, OtherErrors } from "../questions/form-field.tsx";
import styles from "./objects.module.css";
import { OutboxNotice } from "./outbox-notice.tsx";
import { SaidOfFile } from "./said-of-file.tsx";

const PARTS = [
  "overview",
  "examine",
  "measure",
  "marks",
  "provenance",
  "condition",
  "finding",
  "share",
  "history",
] as const;
type Part = (typeof PARTS)[number];

type FileFrameProps = {
  readonly kept: KeptFile;
  readonly access: Access;
  /** Sees it only because it is published. */
  readonly isStranger: boolean;
  readonly part: Part;
  readonly said?: string | string[] | undefined;
  /** A refused form whose errors belong to no field that the page shows. */
  readonly form?: FormState | null;
  readonly shown?: readonly string[];
  readonly children: ReactNode;
};

/** What every page of an object file has: its title, the way to its other parts, and what waits to be sent. */
export function FileFrame({
  kept,
  access,
  isStranger,
  part,
  said,
  form,
  shown = [],
  children,
}: FileFrameProps) {
  const t = useTranslations("objectPages");
  const parts = PARTS.filter(
    (each) => (each !== "share" || access === "owner") && (each !== "history" || !isStranger),
  );
  const base = `/objects/${kept.id}`;
  return (
    <article>
      <header className={styles.head}>
        <p className={plain.note}>
          <Link href="/objects">{t("back")}</Link>
          {access === "view" && <> · {t("viewOnly")}</>}
        </p>
        {part === "overview" ? (
          <h1>{kept.content.title}</h1>
        ) : (
          <>
            <p className={plain.lede}>{kept.content.title}</p>
            <h1>{t(`parts.${part}`)}</h1>
          </>
        )}
        <nav className={styles.parts} aria-label={t("parts.label")}>
          <ul>
            {parts.map((each) => (
              <li key={each}>
                <Link
                  href={each === "overview" ? base : `${base}/${each}`}
                  aria-current={each === part ? "page" : undefined}
                >
                  {t(`parts.${each}`)}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
        {access !== "view" && <OutboxNotice file={kept.id} />}
        {said !== undefined && <SaidOfFile file={kept.id} said={said} />}
        {form && <OtherErrors form={form} shown={shown} />}
      </header>
      <div className={styles.body}>{children}</div>
    </article>
  );
}
