import { useTranslations } from "next-intl";
import type { MouseEvent } from "react";
import type { Observed } from "#core/object-files/vocabulary";
import type { ExamPoint } from "./exam-point.ts";
import styles from "./objects.module.css";

type PointListProps = {
  readonly points: readonly ExamPoint[];
  readonly said: Readonly<Record<string, Observed>>;
  readonly place: number;
  readonly pageOf: (place: number) => string;
  readonly onGo: (place: number, event: MouseEvent) => void;
};

/** Every point of the checklist with what came of it, each a way there. */
export function PointList({ points, said, place, pageOf, onGo }: PointListProps) {
  const t = useTranslations("objectPages.examine");
  const left = points.filter((each) => (said[each.id] ?? each.observed) === null).length;
  return (
    <details className={styles.more}>
      <summary>{t("all", { count: points.length, left })}</summary>
      <ol className={styles.states}>
        {points.map((each, i) => (
          <li key={each.id}>
            <a
              href={pageOf(i)}
              aria-current={i === place ? "step" : undefined}
              onClick={(event) => onGo(i, event)}
            >
              {each.lookFor}
            </a>
            <span>{t(`observed.${said[each.id] ?? each.observed ?? "not yet"}`)}</span>
          </li>
        ))}
      </ol>
    </details>
  );
}
