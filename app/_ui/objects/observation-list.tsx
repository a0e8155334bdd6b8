import { useTranslations } from "next-intl";
import type { ExamPoint } from "./exam-point.ts";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./objects.module.css";

/** What came of every point of the checklist that was looked at. */
export function ObservationList({
  points,
  base,
  heading: Heading = "h2",
}: {
  readonly points: readonly ExamPoint[];
  readonly base?: string;
  readonly heading?: "h2" | "h3";
}) {
  const t = useTranslations("objectPages.examine");
  return (
    <ul className={styles.list}>
      {points.map((each) => (
        <li key={each.id}>
          <Heading>{each.lookFor}</Heading>
          <p>
            {[
              t(`observed.${each.observed ?? "not yet"}`),
              each.options.find(({ id }) => id === each.option)?.says ?? "",
              each.value,
              each.note,
            ]
              .filter((words) => words !== "")
              .join(". ")}
          </p>
          {each.photographs.length > 0 && (
            <div className={styles.photographs}>
              {each.photographs.map((image) => (
                <div key={image.sha256} className={styles.mat}>
                  <ObjectPhoto image={image} alt={each.lookFor} {...(base ? { base } : {})} />
                </div>
              ))}
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}
