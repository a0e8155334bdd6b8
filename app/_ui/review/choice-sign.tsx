import { useTranslations } from "next-intl";
import type { Choice } from "#core/review/vote";
import { StateDrawing } from "../state-drawing.tsx";

/** How somebody voted: a word with a small drawn sign. */
export function ChoiceSign({ choice }: { readonly choice: Choice }) {
  const t = useTranslations("review");
  return <StateDrawing word={t(`chose.${choice}`)}>{drawing(choice)}</StateDrawing>;
}

function drawing(choice: Choice) {
  switch (choice) {
    case "support":
      return <path d="M8 14V2.500M3.500 7 8 2.500 12.500 7" strokeWidth="1.7" />;
    case "oppose":
      return <path d="M8 2v11.500M3.500 9 8 13.500 12.500 9" strokeWidth="1.7" />;
    case "abstain":
      return <path d="M2 8h12" strokeWidth="1.7" />;
  }
}
