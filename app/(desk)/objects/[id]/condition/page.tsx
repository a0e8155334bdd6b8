import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { typedItem } from "#core/object-files/typed-item";
import { ConditionForm } from "#ui/objects/condition-form";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOf, stateOfNew } from "#ui/objects/item-form";
import { ItemPhotographs } from "#ui/objects/item-photographs";
import { More } from "#ui/objects/more";
import { RemoveItem } from "#ui/objects/remove-item";
import { fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import styles from "../../../../_ui/objects/objects.module.css";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.condition"), robots: { index: false } };
}

/** What has become of the object. */
export default async function ConditionPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said }] = await Promise.all([params, searchParams]);
  const [{ kept, access }, t] = await Promise.all([
    fileForPage(id, "condition"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(form);
  const { conditions, photographs } = kept.content;
  const mayChange = access !== "view";
  const fresh = stateOfNew(refused, "condition", conditions, newItemId());
  return (
    <FileFrame kept={kept} access={access} part="condition" said={said}>
      <section>
        {conditions.length === 0 && <p>{t("noConditions")}</p>}
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
                <h2>{about}</h2>
                {each.note && <p>{each.note}</p>}
                <ItemPhotographs
                  kept={kept}
                  photographs={photographs.filter(({ item }) => item === each.id)}
                  alt={about}
                  part="condition"
                  mayChange={mayChange}
                />
                {mayChange && (
                  <>
                    <More words={t("change")} isOpen={state.given}>
                      <ConditionForm kept={kept} state={state} isThere photographId={newItemId()} />
                    </More>
                    <RemoveItem kept={kept} list="conditions" id={each.id} part="condition" about={about} />
                  </>
                )}
              </li>
            );
          })}
        </ul>
      </section>
      {mayChange && (
        <section aria-labelledby="add">
          <h2 id="add">{t("addCondition")}</h2>
          <ConditionForm kept={kept} state={fresh} isThere={false} photographId={newItemId()} />
        </section>
      )}
    </FileFrame>
  );
}
