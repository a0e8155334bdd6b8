import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { ConditionForm } from "#ui/objects/condition-form";
import { ConditionList } from "#ui/objects/condition-list";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOfNew } from "#ui/objects/item-form";
import { fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.condition"), robots: { index: false } };
}

/** What has become of the object. */
export default async function ConditionPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, { form, said }] = await Promise.all([params, searchParams]);
  const [{ kept, access, isStranger }, t] = await Promise.all([
    fileForPage(id, "condition"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(form);
  const { conditions } = kept.content;
  const mayChange = access !== "view";
  const fresh = stateOfNew(refused, "condition", conditions, newItemId());
  return (
    <FileFrame {...{ kept, access, isStranger }} part="condition" said={said}>
      <section>
        {conditions.length === 0 && <p>{t("noConditions")}</p>}
        <ConditionList {...{ kept, refused, mayChange }} newId={newItemId} heading="h2" />
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
