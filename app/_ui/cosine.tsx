import { useFormatter, useTranslations } from "next-intl";
import plain from "./plain.module.css";
import { unrelatedCosine } from "./unrelated-cosine.ts";

type CosineProps = {
  readonly similarity: number;
  readonly model: string;
  /** Whose it is: that of the nearest of a list, or of the one that is looked at. */
  readonly of: "nearest" | "one";
};

/** The number behind a likeness, never without the number that unrelated marks come to. */
export function Cosine({ similarity, model, of }: CosineProps) {
  const t = useTranslations("likeness");
  const format = useFormatter();
  const digits = (value: number) =>
    format.number(value, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const unrelated = unrelatedCosine(model);
  return (
    <p className={plain.note}>
      {unrelated === null
        ? t("cosineUnknown", { of, value: digits(similarity), model })
        : t("cosine", { of, value: digits(similarity), unrelated: digits(unrelated) })}
    </p>
  );
}
