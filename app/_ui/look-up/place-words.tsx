import { useTranslations } from "next-intl";
import styles from "./cropping.module.css";
import type { PlacesState } from "./use-places.ts";

type PlaceWordsProps = {
  readonly places: PlacesState;
  /** Was the frame drawn or moved by the person? */
  readonly byHand: boolean;
};

/** Says where the mark is thought to be, and how sure that is; says nothing once the person has framed it. */
export function PlaceWords({ places, byHand }: PlaceWordsProps) {
  const t = useTranslations("bench.place");
  const { looking, count, confident, shown } = places;
  const words = () => {
    if (looking) return t("looking");
    if (shown === 0 && confident) return t("here");
    if (shown !== null) return t("maybe", { number: shown + 1, count });
    return byHand || count === 0 ? "" : t("unclear");
  };
  return (
    <p role="status" className={styles.place} data-place={looking ? "looking" : "told"}>
      {words()}
    </p>
  );
}

/** Frames the next of the places where the mark may be. */
export function NextPlace({
  places,
  className,
}: {
  readonly places: PlacesState;
  readonly className: string | undefined;
}) {
  const t = useTranslations("bench.place");
  const { count, shown, next } = places;
  if (count === 0 || (count === 1 && shown === 0)) return null;
  return (
    <button type="button" className={className} onClick={next}>
      {shown === null ? t("show") : t("next")}
    </button>
  );
}
