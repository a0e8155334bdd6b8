import { useTranslations } from "next-intl";
import { type AskedPhotograph, MOST_PHOTOGRAPHS } from "#core/look-ups/asked-photographs";
import { SMALLEST_REGION } from "#core/photographs/region";
import { imageAtLeast } from "../image-address.ts";
import plain from "../plain.module.css";
import { ACCEPT } from "./check-file.ts";
import { rounded } from "./crop-geometry.ts";
import styles from "./plain-cropping.module.css";

/** Cropping without scripts: each photograph with its size, and its frame as numbers in a plain form; and more of them. */
export function PlainCropping({ photographs }: { readonly photographs: readonly AskedPhotograph[] }) {
  const t = useTranslations("bench");
  return (
    <form
      className={styles.plain}
      action="/api/look-ups"
      method="post"
      encType="multipart/form-data"
      data-plain-cropping
    >
      {photographs.map((image, place) => (
        // By its place, since one photograph can be asked with twice; none ever moves.
        <PlainFrame key={place} image={image} />
      ))}
      {photographs.length < MOST_PHOTOGRAPHS && (
        <>
          <label className={plain.label}>
            {t("plainMore")}
            <input type="file" name="photograph" accept={ACCEPT} multiple />
          </label>
          <label className={plain.label}>
            {t("plainOther")}
            <input type="file" name="other_photograph" accept={ACCEPT} multiple />
          </label>
        </>
      )}
      <button type="submit" className={plain.button}>
        {t("lookUp")}
      </button>
    </form>
  );
}

function PlainFrame({ image }: { readonly image: AskedPhotograph }) {
  const t = useTranslations("bench");
  const region = rounded(image.region);
  const limits = {
    x: [-image.width, image.width],
    y: [-image.height, image.height],
    width: [SMALLEST_REGION, Math.hypot(image.width, image.height)],
    height: [SMALLEST_REGION, Math.hypot(image.width, image.height)],
  } as const;
  return (
    <>
      <p className={plain.note}>{t("plainNote", { width: image.width, height: image.height })}</p>
      <img
        src={imageAtLeast(image, 1280)}
        width={image.width}
        height={image.height}
        alt={t("yourPhotograph")}
      />
      <input type="hidden" name="again" value={image.sha256} />
      <input type="hidden" name="mark" value={image.mark} />
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
    </>
  );
}
