import { useTranslations } from "next-intl";
import { type LookUpView, marksOf } from "#core/look-ups/look-up";
import { isWhole } from "./crop-geometry.ts";

/** What the answer is, in one line, and how to take it. */
export function AnswerHead({ view }: { readonly view: LookUpView }) {
  const t = useTranslations("lookUp");
  const uncropped = isWhole(view.query.region, view.query);
  const found = marksOf(view).some(({ noneFits }) => !noneFits);
  const kind = found ? "nearest" : uncropped ? "noneInWhole" : "noneFits";
  return (
    <>
      <h1>{t(kind)}</h1>
      <p>{t(`${kind}Note`)}</p>
    </>
  );
}
