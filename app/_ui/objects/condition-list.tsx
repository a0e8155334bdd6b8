import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { typedItem } from "#core/object-files/typed-item";
import { ConditionForm } from "./condition-form.tsx";
import { type RefusedItem, stateOf } from "./item-form.tsx";
import { ItemPhotographs } from "./item-photographs.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type ConditionListProps = {
  readonly kept: KeptFile;
  readonly refused: RefusedItem;
  readonly mayChange: boolean;
  readonly newId: () => string;
  readonly heading: "h2" | "h3";
  /** Folder of the images, where it is not that of everybody's. */
  readonly base?: string;
};

/** What has become of the object, place by place, with photographs. */
export function ConditionList({
  kept,
  refused,
  mayChange,
  newId,
  heading: Heading,
  base,
}: ConditionListProps) {
  const t = useTranslations("objectPages");
  const { conditions, photographs } = kept.content;
  return (
    <ul className={styles.list}>
      {conditions.map((each) => {
        const about = t("conditionSays", {
          extent: t(`extents.${each.extent}`),
          condition: t(`conditions.${each.condition}`),
          place: each.place || "none",
        });
        const state = stateOf(refused, "condition", each.id, typedItem(each));
        return (
          <li key={each.id}>
            <Heading>{about}</Heading>
            {each.note && <p>{each.note}</p>}
            <ItemPhotographs
              {...{ kept, mayChange, ...(base ? { base } : {}) }}
              photographs={photographs.filter(({ item }) => item === each.id)}
              alt={about}
              part="condition"
            />
            {mayChange && (
              <>
                <More words={t("change")} isOpen={state.given}>
                  <ConditionForm kept={kept} state={state} isThere photographId={newId()} />
                </More>
                <RemoveItem kept={kept} list="conditions" id={each.id} part="condition" about={about} />
              </>
            )}
          </li>
        );
      })}
    </ul>
  );
}
