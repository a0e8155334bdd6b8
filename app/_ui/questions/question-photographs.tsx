import { useTranslations } from "next-intl";
import type { QuestionPhotograph } from "#core/questions/kept-question";
import { Cut } from "../cut.tsx";
import plain from "../plain.module.css";
import { Viewer } from "../viewer/viewer.tsx";
import styles from "./question.module.css";

type QuestionPhotographsProps = {
  readonly title: string;
  readonly photographs: readonly QuestionPhotograph[];
};

/** The photographs of a question as an entry shows its own, and of each the part that was looked up. */
export function QuestionPhotographs({ title, photographs }: QuestionPhotographsProps) {
  const t = useTranslations("questions");
  const shown = photographs.map((photograph) => ({
    ...photograph,
    id: photograph.sha256,
    pixelsPerMm: null,
    impression: null,
    shows: t("lookedUp"),
  }));
  const framed = photographs.filter(({ region, width, height }) => {
    return region.width < width || region.height < height;
  });
  return (
    <>
      <Viewer title={title} photographs={shown} />
      {framed.length > 0 && (
        <figure className={styles.framed}>
          <figcaption className={plain.note}>{t("framed", { count: framed.length })}</figcaption>
          <ul>
            {framed.map((photograph) => (
              <li key={photograph.sha256}>
                <Cut image={photograph} alt={t("framedAlt", { title })} shownAt={200} snug />
              </li>
            ))}
          </ul>
        </figure>
      )}
    </>
  );
}
