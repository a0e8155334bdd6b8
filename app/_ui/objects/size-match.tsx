import { useTranslations } from "next-intl";
import type { FileLine } from "#core/object-files/object-file";
import type { Family } from "#core/object-files/vocabulary";
import type { Making } from "#core/sizes/allowances";
import type { SizeEstimate } from "#core/sizes/estimate-size";
import { SizeAnswer } from "../sizes/size-answer.tsx";
import { wordEdtf } from "../word-edtf.ts";

type SizeMatchProps = {
  readonly line: FileLine | null;
  readonly family: Family;
  readonly sizes: SizeEstimate | null;
};

/** Which size of its line the object is, for each way in which the catalogue may have measured. */
export function SizeMatch({ line, family, sizes }: SizeMatchProps) {
  const t = useTranslations("objectPages.measure");
  const period = useTranslations("period");
  if (!line || !sizes) return <p>{t("noLine")}</p>;
  return (
    <>
      <p>
        {t("lineSays", {
          name: line.name,
          made: line.made === null ? period("unknown") : wordEdtf(line.made, period),
          sizes: line.sizes.map(({ name }) => name).join(", "),
        })}
      </p>
      <SizeAnswer estimate={sizes} making={makingOf(family)} />
    </>
  );
}

function makingOf(family: Family): Making {
  if (family === "soft toys" || family === "textiles and labels") return "stuffed";
  return family === "ceramics" ? "fired-clay" : "rigid";
}
