import Link from "next/link";
import { useTranslations } from "next-intl";
import { type LookUpView, type MakerOfMarks, marksOf } from "#core/look-ups/look-up";
import type { AgainstMaker } from "#core/similarity/makers-of-marks";
import { Cut } from "../cut.tsx";
import { PeriodWords } from "../period-words.tsx";
import plain from "../plain.module.css";
import { Findings } from "./findings.tsx";
import styles from "./makers-of-marks.module.css";

/** Makers that use several of the marks on one object: which entry answers which mark, and what speaks against it. */
export function MakersOfMarks({ view }: { readonly view: LookUpView }) {
  const t = useTranslations("makersOfMarks");
  const marks = marksOf(view).length;
  return (
    <section className={styles.makers} aria-labelledby="makers-of-marks">
      <h2 id="makers-of-marks">{t("heading", { marks })}</h2>
      <p className={plain.note}>{view.makers.length > 0 ? t("note") : t("none", { marks })}</p>
      {view.makers.length > 0 && (
        <ol className={styles.list}>
          {view.makers.map((each) => (
            <li key={each.maker.slug}>
              <OneMaker view={view} found={each} />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

function OneMaker({ view, found }: { readonly view: LookUpView; readonly found: MakerOfMarks }) {
  const t = useTranslations();
  const { maker, answers, against } = found;
  return (
    <article className={styles.maker}>
      <h3>
        <Link href={`/makers/${maker.slug}`}>{maker.name}</Link>
        {maker.place && <span className={styles.place}>, {maker.place}</span>}
      </h3>
      <ul className={styles.answers}>
        {answers.map(({ mark, match }) => (
          <li key={mark} className={styles.answer}>
            {match.photograph && (
              <span className={styles.mat}>
                <Cut image={match.photograph} alt="" shownAt={140} />
              </span>
            )}
            <div>
              <p className={plain.note}>{t("several.mark", { mark })}</p>
              <p>
                <Link href={`/entries/${match.entry.slug}`}>{match.entry.title}</Link>
              </p>
              <p>
                <PeriodWords period={match.entry.period} />
              </p>
              <p className={plain.note}>{t(`likeness.${match.likeness ?? "noPhotograph"}`)}</p>
              {mark === 1 && <Findings asked={view.asked} match={match} />}
            </div>
          </li>
        ))}
      </ul>
      {against.length > 0 && (
        <div className={styles.against}>
          <h4>{t("makersOfMarks.against")}</h4>
          <ul>
            {against.map((each) => (
              <li key={`${each.why} ${each.why === "periods-apart" ? each.marks.join() : each.mark}`}>
                <Against against={each} />
              </li>
            ))}
          </ul>
        </div>
      )}
    </article>
  );
}

function Against({ against }: { readonly against: AgainstMaker }) {
  const t = useTranslations("makersOfMarks");
  switch (against.why) {
    case "nothing-near":
      return t("nothingNear", { mark: against.mark });
    case "other-nearer":
      return t.rich("otherNearer", {
        mark: against.mark,
        title: against.title,
        link: (words) => <Link href={`/entries/${against.slug}`}>{words}</Link>,
      });
    case "periods-apart":
      return t("periodsApart", { one: against.marks[0], other: against.marks[1] });
  }
}
