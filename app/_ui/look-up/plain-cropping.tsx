import { useTranslations } from "next-intl";
import { type Region, SMALLEST_REGION } from "#core/photographs/region";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import { rounded, type Size } from "./crop-geometry.ts";
import styles from "./plain-cropping.module.css";

type PlainCroppingProps = {
  readonly image: Size & { readonly sha256: string; readonly region: Region };
};

/** Cropping without scripts: the photograph with its size, and the frame as numbers in a plain form. */
export function PlainCropping({ image }: PlainCroppingProps) {
  const t = useTranslations("bench");
  const region = rounded(image.region);
  const limits = {
    x: [-image.width, image.width],
    y: [-image.height, image.height],
    width: [SMALLEST_REGION, Math.hypot(image.width, image.height)],
    height: [SMALLEST_REGION, Math.hypot(image.width, image.height)],
  } as const;
  return (
    <form
      className={styles.plain}
      action="/api/look-ups"
      method="post"
      encType="multipart/form-data"
      data-plain-cropping
    >
      <p className={plain.note}>{t("plainNote", { width: image.width, height: image.height })}</p>
      <img
        src={imageAtLeast(image, 1280)}
        width={image.width}
        height={image.height}
        alt={t("yourPhotograph")}
      />
      <input type="hidden" name="again" value={image.sha256} />
      <fieldset>
        <legend>{t("numbers")}</legend>
        {(["x", "y", "width", "height"] as const).map((name) => (
          <label key={name} className={plain.label}>
            {t(`box.${name}`)}, {t("pixels")}
            <input
              className={plain.input}
              type="number"
              name={name}
              required
              step="any"
              min={Math.floor(limits[name][0])}
              max={Math.ceil(limits[name][1])}
              defaultValue={region[name]}
            />
          </label>
        ))}
        <label className={plain.label}>
          {t("turnClockwise")}
          <input className={plain.input} type="number" name="turn" step="any" defaultValue={region.turn} />
        </label>
      </fieldset>
      <button type="submit" className={plain.button}>
        {t("lookUp")}
      </button>
    </form>
  );
}
