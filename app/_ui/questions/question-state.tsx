import { useTranslations } from "next-intl";
import type { QuestionState } from "#core/questions/question";
import { StateDrawing } from "../state-drawing.tsx";

type Shown = Exclude<QuestionState, "unasked">;

/** Where a question stands: a word with a small drawn sign. */
export function QuestionStateSign({ state }: { readonly state: Shown }) {
  const t = useTranslations("questionStates");
  return <StateDrawing word={t(state)}>{drawing(state)}</StateDrawing>;
}

/** A slip of paper: empty, written and ticked, struck through. */
function drawing(state: Shown) {
  const slip = <path d="M2.700 1.700h10.600v12.600H2.700z" />;
  switch (state) {
    case "open":
      return (
        <>
          {slip}
          <path d="M5.300 11h5.400" strokeDasharray="1.200 1.200" />
        </>
      );
    case "answered":
      return (
        <>
          {slip}
          <path d="m5.200 8.200 2 2.100 3.700-4.500" />
        </>
      );
    case "withdrawn":
      return (
        <>
          {slip}
          <path d="m2.700 14.300 10.600-12.600" />
        </>
      );
  }
}
