import { useTranslations } from "next-intl";
import { DIAMOND_CORNERS } from "#core/decoding/diamond-table";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import { typedIn } from "./asked.ts";
import type { FormProps } from "./decoder-form.tsx";
import styles from "./diamond.module.css";
import { DiamondOutline } from "./diamond-outline.tsx";

const PLACES = ["class", ...DIAMOND_CORNERS] as const;

/** The diamond as it stands on the object: each letter and figure is typed where it is seen. */
export function DiamondForm({ input, error }: FormProps) {
  const t = useTranslations("decoders.diamond");
  const fields = useTranslations("fields");
  const wrong = PLACES.find((place) => place === error?.field);
  return (
    <fieldset className={styles.fields}>
      <legend className={plain.label}>{t("legend")}</legend>
      <div className={styles.drawing}>
        <DiamondOutline />
        {PLACES.map((place) => (
          <div key={place} className={`${styles.place} ${styles[place] ?? ""}`}>
            <label htmlFor={place}>{fields(place)}</label>
            <input
              id={place}
              name={place}
              defaultValue={typedIn(input, place)}
              maxLength={place === "class" ? 5 : 3}
              size={3}
              autoComplete="off"
              autoCapitalize="characters"
              spellCheck={false}
              className={plain.input}
              aria-invalid={wrong === place ? true : undefined}
              aria-describedby={wrong === place ? "diamond-error diamond-note" : "diamond-note"}
              // biome-ignore lint/a11y/noAutofocus: what is wrong is where the next key goes
              autoFocus={wrong === place}
            />
          </div>
        ))}
      </div>
      {error && wrong && <FieldErrorNote error={error} id="diamond-error" />}
      <p className={plain.note} id="diamond-note">
        {t("note")}
      </p>
    </fieldset>
  );
}
