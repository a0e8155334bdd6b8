import { useTranslations } from "next-intl";
import { FAMILIES, type Family, FEATURES } from "#core/decoding/making";
import { FieldErrorNote } from "../field-error.tsx";
import { tickedIn } from "./asked.ts";
import styles from "./decoder-form.module.css";
import type { FormProps } from "./decoder-form.tsx";

/** What is seen of the making, by family; what is ticked stays laid open. */
export function MakingForm({ input, error }: FormProps) {
  const t = useTranslations("decoders.making");
  const ticked = tickedIn(input, "features");
  const holdsTicked = (family: Family) =>
    FEATURES.some((each) => each.family === family && ticked.includes(each.id));
  const open = FAMILIES.filter(holdsTicked);
  return (
    <fieldset className={styles.families}>
      <legend>{t("legend")}</legend>
      {error?.field === "features" && <FieldErrorNote error={error} />}
      {FAMILIES.map((family, i) => (
        <details key={family} open={open.length === 0 ? i === 0 : open.includes(family)}>
          <summary>{t(`families.${family}`)}</summary>
          <div className={styles.features}>
            {FEATURES.filter((each) => each.family === family).map(({ id, feature }) => (
              <label key={id} className={styles.tick}>
                <input type="checkbox" name="features" value={id} defaultChecked={ticked.includes(id)} />
                <span>{feature}</span>
              </label>
            ))}
          </div>
        </details>
      ))}
    </fieldset>
  );
}
