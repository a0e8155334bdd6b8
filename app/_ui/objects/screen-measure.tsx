import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { FilePhotograph } from "#core/object-files/object-file";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ItemForm, type ItemState } from "./item-form.tsx";
import { MeasureOnPhotograph } from "./measure-on-photograph.tsx";
import { MeasuredFields } from "./measurement-form.tsx";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./objects.module.css";

type ScreenMeasureProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  /** The photograph that is measured; null while none is chosen. */
  readonly photograph: FilePhotograph | null;
};

/** Measures on a photograph that has a scale in it: first which photograph, then the points. */
export function ScreenMeasure({ kept, state, photograph }: ScreenMeasureProps) {
  const t = useTranslations("objectPages.measure");
  const words = useTranslations("objectPages");
  const { photographs } = kept.content;
  if (photographs.length === 0) return <p>{t("noPhotographs")}</p>;
  if (!photograph)
    return (
      <>
        <p>{t("choosePhotographNote")}</p>
        <ul className={styles.photographs}>
          {photographs.map((each) => (
            <li key={each.id}>
              <a href={`/objects/${kept.id}/measure?on=${each.id}#on-screen`} className={styles.mat}>
                <ObjectPhoto image={each} alt={each.shows || t("take")} />
              </a>
            </li>
          ))}
        </ul>
      </>
    );
  return (
    <>
      <p>{t("onScreenNote")}</p>
      <ItemForm
        {...{ kept, state }}
        isThere={false}
        command="measure-on-screen"
        part="measure"
        about={words("about.measurement")}
        shown={["measured", "base", "part"]}
        className={forms.form}
      >
        <input type="hidden" name="photograph" value={photograph.id} />
        <MeasureOnPhotograph src={`/images/${photograph.sha256}`} image={photograph} typed={state.typed} />
        <MeasuredFields state={state} prefix="screen-" />
        <button type="submit" className={plain.button}>
          {words("save")}
        </button>
      </ItemForm>
      <p>
        <a href={`/objects/${kept.id}/measure#on-screen`}>{t("choosePhotograph")}</a>
      </p>
    </>
  );
}
