import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { noticesOf } from "#core/object-files/notices";
import { typedItem } from "#core/object-files/typed-item";
import { FileFrame } from "#ui/objects/file-frame";
import { stateOf, stateOfNew } from "#ui/objects/item-form";
import { MarkForm } from "#ui/objects/mark-form";
import { MarkItem } from "#ui/objects/mark-item";
import { Notices } from "#ui/objects/notices";
import { entriesByWords, fileForPage, keptForm, newItemId } from "#web/object-files/reading";
import { showLookUp } from "#web/reading";
import styles from "../../../../_ui/objects/objects.module.css";
import type { ObjectPageProps } from "../../../../_ui/objects/page-props.ts";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("parts.marks"), robots: { index: false } };
}

/** The marks found on the object, each looked up from here and pinned to what it was found to be. */
export default async function MarksPage({ params, searchParams }: ObjectPageProps) {
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const [{ kept, access, entries, isStranger }, t] = await Promise.all([
    fileForPage(id, "marks"),
    getTranslations("objectPages"),
  ]);
  const refused = keptForm(query.form);
  const found = typeof query.lookUp === "string" ? await showLookUp(query.lookUp) : null;
  const words = typeof query.words === "string" ? query.words.trim() : "";
  const byWords = words === "" ? null : { words, found: await entriesByWords(words) };
  const { marks } = kept.content;
  const mayChange = access !== "view";
  const fresh = stateOfNew(refused, "mark", marks, newItemId());
  const others = refused && refused.typed.did !== "mark" ? refused : null;
  return (
    <FileFrame {...{ kept, access, isStranger }} part="marks" said={query.said} form={others}>
      <Notices notices={noticesOf(kept.content, entries)} />
      <section>
        {marks.length === 0 && <p>{t("noMarks")}</p>}
        <ul className={styles.list}>
          {marks.map((mark) => (
            <li key={mark.id} id={`mark-${mark.id}`}>
              <MarkItem
                {...{ kept, mark, entries, mayChange }}
                state={stateOf(refused, "mark", mark.id, typedItem(mark))}
                photographId={newItemId()}
                found={query.mark === mark.id ? (found?.view ?? null) : null}
                byWords={query.mark === mark.id ? byWords : null}
              />
            </li>
          ))}
        </ul>
      </section>
      {mayChange && (
        <section aria-labelledby="add">
          <h2 id="add">{t("addMark")}</h2>
          <MarkForm kept={kept} state={fresh} isThere={false} photographId={newItemId()} />
        </section>
      )}
    </FileFrame>
  );
}
