import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import type { FilePhotograph } from "#core/object-files/object-file";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type ItemPhotographsProps = {
  readonly kept: Pick<KeptFile, "id" | "version">;
  readonly photographs: readonly FilePhotograph[];
  /** What they show, where they don't say. */
  readonly alt: string;
  readonly part: string;
  readonly mayChange: boolean;
  readonly base?: string;
  /** The first is shown as large as there is room. */
  readonly isLead?: boolean;
};

/** The photographs of one item, large on their mats. */
export function ItemPhotographs({
  kept,
  photographs,
  alt,
  part,
  mayChange,
  base,
  isLead,
}: ItemPhotographsProps) {
  const t = useTranslations("objectPages");
  if (photographs.length === 0) return null;
  return (
    <div className={`${styles.photographs} ${isLead ? styles.whole : ""}`}>
      {photographs.map((each, at) => (
        <figure key={each.id}>
          <div className={styles.mat}>
            <a href={`${base ?? "/images"}/${each.sha256}`}>
              <ObjectPhoto
                image={each}
                alt={each.shows || alt}
                shownAt={isLead && at === 0 ? 1280 : 640}
                {...(base ? { base } : {})}
              />
            </a>
          </div>
          <figcaption>
            {[each.shows, each.credit && t("credit", { credit: each.credit })]
              .filter((words) => words)
              .join(". ")}
          </figcaption>
          {mayChange && (
            <RemoveItem kept={kept} list="photographs" id={each.id} part={part} about={each.shows || alt} />
          )}
        </figure>
      ))}
    </div>
  );
}
