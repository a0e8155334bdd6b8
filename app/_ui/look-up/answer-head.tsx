import Link from "next/link";
import { useTranslations } from "next-intl";
import { type LookUpView, marksOf } from "#core/look-ups/look-up";
import { percentOf, surenessOf } from "#core/similarity/sureness";
import { isWhole } from "./crop-geometry.ts";

/** What the answer is, in one line, how sure it is, and how to take it. */
export function AnswerHead({ view }: { readonly view: LookUpView }) {
  const t = useTranslations("lookUp");
  const uncropped = isWhole(view.query.region, view.query);
  const found = marksOf(view).some(({ noneFits }) => !noneFits);
  const none = uncropped ? "noneInWhole" : "noneFits";
  const { noneProbability } = view;
  if (noneProbability === null)
    return (
      <>
        <h1>{t(found ? "nearest" : none)}</h1>
        <p>
          {t(found ? "nearestNote" : `${none}Note`)} <HowSure view={view} words="notCalibrated" />
        </p>
      </>
    );
  // Of several marks, each says below how sure its own answer is.
  if (view.otherMarks.length > 0)
    return (
      <>
        <h1>{t(found ? "severalMarks" : none)}</h1>
        <p>
          {t("severalMarksNote")} <HowSure view={view} words="howSure" />
        </p>
      </>
    );
  const most = Math.max(0, ...view.matches.map(({ probability }) => probability ?? 0));
  return (
    <>
      <h1>{view.noneFits ? t(none) : t(`claim.${surenessOf(most) ?? "unclaimed"}`)}</h1>
      <p>
        {view.noneFits
          ? t("noneAt", { percent: percentOf(noneProbability) })
          : t("claimAt", { percent: percentOf(most) })}{" "}
        {view.noneFits && t(`${none}Note`)} <HowSure view={view} words="howSure" />
      </p>
    </>
  );
}

/** The way to how often answers given so were right. */
function HowSure({
  view,
  words,
}: {
  readonly view: LookUpView;
  readonly words: "howSure" | "notCalibrated";
}) {
  const t = useTranslations("lookUp");
  const href = `/how-sure?model=${encodeURIComponent(view.model)}`;
  return t.rich(words, { link: (text) => <Link href={href}>{text}</Link> });
}
