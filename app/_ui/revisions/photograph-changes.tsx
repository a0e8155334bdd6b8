import { useFormatter, useTranslations } from "next-intl";
import type { PhotographChange } from "#core/entries/difference";
import type { Photograph } from "#core/photographs/photograph";
import { Cut } from "../cut.tsx";
import { fullImage } from "../image-address.ts";
import styles from "./revisions.module.css";
import { TextDifference } from "./text-difference.tsx";

type PhotographChangesProps = {
  readonly changes: readonly PhotographChange[];
  readonly reordered: boolean;
};

/** Photographs side by side: what was taken out, what was added, and of which something else is said now. */
export function PhotographChanges({ changes, reordered }: PhotographChangesProps) {
  const t = useTranslations("revisions");
  return (
    <>
      {reordered && <p>{t("reordered")}</p>}
      <ul className={styles.photographs}>
        {changes.map((change) => (
          <li key={"after" in change ? change.after.id : change.before.id}>
            <h3>
              {change.is === "added"
                ? t("photographAdded")
                : change.is === "removed"
                  ? t("photographRemoved")
                  : t("photographChanged")}
            </h3>
            <One change={change} />
          </li>
        ))}
      </ul>
    </>
  );
}

function One({ change }: { readonly change: PhotographChange }) {
  const said = useSaid();
  if (change.is !== "changed") {
    const photograph = change.is === "added" ? change.after : change.before;
    return (
      <figure className={styles.figure}>
        <Framed photograph={photograph} />
        <figcaption>{said(photograph)}</figcaption>
      </figure>
    );
  }
  const { before, after } = change;
  return (
    <figure className={styles.figure}>
      <div className={styles.beside}>
        <Framed photograph={before} />
        <Framed photograph={after} />
      </div>
      <figcaption>
        <TextDifference before={said(before)} after={said(after)} />
      </figcaption>
    </figure>
  );
}

/** What is said of a photograph, in one sentence. */
function useSaid() {
  const t = useTranslations("revisions");
  const v = useTranslations("viewer");
  const format = useFormatter();
  return ({ shows, credit, licence, impression, pixelsPerMm, region }: Photograph): string => {
    const { x, y, width, height, turn } = region;
    const frame = [x, y, width, height].map((value) => format.number(Math.round(value))).join(", ");
    return [
      shows,
      `${credit}, ${licence}.`,
      impression === null ? "" : `${t("impression", { number: impression })}.`,
      pixelsPerMm === null ? v("noScale") : `${format.number(pixelsPerMm)} px/mm.`,
      `[${frame}; ${format.number(Math.round(turn))}°]`,
    ]
      .filter((part) => part !== "")
      .join(" ");
  };
}

function Framed({ photograph }: { readonly photograph: Photograph }) {
  return (
    <a href={fullImage(photograph)} className={styles.mat}>
      <Cut image={photograph} alt={photograph.shows} shownAt={420} snug />
    </a>
  );
}
