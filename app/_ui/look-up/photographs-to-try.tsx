import { useTranslations } from "next-intl";
import type { PhotographToTry } from "#core/look-ups/photograph-to-try";
import plain from "../plain.module.css";
import styles from "./try.module.css";
import { TryForm } from "./try-form.tsx";

/** Photographs of the demo in one long strip; each is looked up by one press, with or without scripts. */
export function PhotographsToTry({ photographs }: { readonly photographs: readonly PhotographToTry[] }) {
  const t = useTranslations("try");
  return (
    <section className={styles.section} aria-labelledby="to-try">
      <h2 id="to-try">{t("heading")}</h2>
      <p className={plain.note}>{t("note")}</p>
      <TryForm className={styles.strip} label={t("heading")}>
        {photographs.map((photograph) => (
          <li key={photograph.name}>
            <button type="submit" name="try" value={photograph.name} className={styles.one}>
              <img
                src={`/try/${photograph.name}`}
                alt=""
                width={photograph.width}
                height={photograph.height}
                loading="lazy"
              />
              <span>
                {t.rich("lookUp", {
                  title: photograph.title,
                  verb: (words) => <span className={plain.hidden}>{words}</span>,
                })}
              </span>
            </button>
          </li>
        ))}
      </TryForm>
    </section>
  );
}
