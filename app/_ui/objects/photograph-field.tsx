import { useTranslations } from "next-intl";
import { ACCEPT } from "../look-up/check-file.ts";
import plain from "../plain.module.css";
import styles from "./objects.module.css";

/** Takes one photograph: by the phone's camera where there is one, or a file. */
export function PhotographField({ prefix }: { readonly prefix: string }) {
  const t = useTranslations("objectPages");
  const note = `${prefix}photograph-note`;
  return (
    <>
      <div className={`${plain.field} ${styles.cameraField}`}>
        <label htmlFor={`${prefix}camera`}>{t("camera")}</label>
        <input
          id={`${prefix}camera`}
          type="file"
          name="photograph"
          accept="image/*"
          capture="environment"
          className={plain.input}
        />
      </div>
      <div className={plain.field}>
        <label htmlFor={`${prefix}photograph`}>{t("choosePhotograph")}</label>
        <input
          id={`${prefix}photograph`}
          type="file"
          name="photograph"
          accept={ACCEPT}
          className={plain.input}
          aria-describedby={note}
        />
        <p className={plain.note} id={note}>
          {t("photographNote")}
        </p>
      </div>
    </>
  );
}
