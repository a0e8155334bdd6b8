import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { typedItem } from "#core/object-files/typed-item";
import { OBSERVED } from "#core/object-files/vocabulary";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, LineField, TextField } from "../questions/form-field.tsx";
import { ItemForm, type ItemState, type RefusedItem, stateOf, stateOfNew } from "./item-form.tsx";
import { ItemPhotographs } from "./item-photographs.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { PhotographField } from "./photograph-field.tsx";
import { RemoveItem } from "./remove-item.tsx";

type OwnObservationsProps = {
  readonly kept: KeptFile;
  readonly mayChange: boolean;
  readonly refused: RefusedItem;
  readonly newId: () => string;
  /** Folder of the images, where it is not that of everybody's. */
  readonly base?: string;
};

/** What was seen outside the checklist, and the form that adds to it. */
export function OwnObservations({ kept, mayChange, refused, newId, base }: OwnObservationsProps) {
  const t = useTranslations("objectPages");
  const { observations, photographs } = kept.content;
  const own = observations.filter(({ point }) => point === null);
  // A refused answer to a point of the checklist is shown at that point.
  const mine = refused?.typed.point ? null : refused;
  const fresh = stateOfNew(mine, "observation", observations, newId());
  if (own.length === 0 && !mayChange) return null;
  return (
    <section className={styles.section} aria-labelledby="own">
      <h2 id="own">{t("own.title")}</h2>
      {own.length > 0 && (
        <ul className={styles.list}>
          {own.map((each) => {
            const state = stateOf(mine, "observation", each.id, typedItem(each));
            return (
              <li key={each.id}>
                <h3>{each.what}</h3>
                <p>
                  {[t(`examine.observed.${each.observed}`), each.value, each.note]
                    .filter((words) => words !== "")
                    .join(". ")}
                </p>
                <ItemPhotographs
                  {...{ kept, mayChange, ...(base ? { base } : {}) }}
                  photographs={photographs.filter(({ item }) => item === each.id)}
                  alt={each.what}
                  part="examine"
                />
                {mayChange && (
                  <>
                    <More words={t("change")} isOpen={state.given}>
                      <OwnForm {...{ kept, state }} isThere photographId={newId()} />
                    </More>
                    <RemoveItem
                      {...{ kept, list: "observations", id: each.id }}
                      part="examine"
                      about={each.what}
                    />
                  </>
                )}
              </li>
            );
          })}
        </ul>
      )}
      {mayChange && (
        <More words={t("own.add")} isOpen={fresh.given}>
          <OwnForm {...{ kept }} state={fresh} isThere={false} photographId={newId()} />
        </More>
      )}
    </section>
  );
}

type OwnFormProps = {
  readonly kept: KeptFile;
  readonly state: ItemState;
  readonly isThere: boolean;
  readonly photographId: string;
};

function OwnForm({ kept, state, isThere, photographId }: OwnFormProps) {
  const t = useTranslations("objectPages");
  const common = { form: state, prefix: `o-${state.id}-` };
  return (
    <ItemForm
      {...{ kept, state, isThere, photographId }}
      command="observation"
      part="examine"
      about={t("about.observation")}
      shown={["what", "observed", "value", "note"]}
    >
      <div className={forms.pair}>
        <LineField {...common} name="what" label={t("own.what")} note={t("own.whatNote")} />
        <ChoiceField
          {...common}
          name="observed"
          label={t("examine.question")}
          choices={OBSERVED.map((each) => [each, t(`examine.observed.${each}`)] as const)}
        />
      </div>
      <TextField {...common} name="value" label={t("examine.value")} rows={2} optional />
      <TextField {...common} name="note" label={t("examine.note")} rows={3} optional />
      <PhotographField prefix={common.prefix} />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </ItemForm>
  );
}
