import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { EntryView } from "#core/entries/entry";
import { HIDEABLE } from "#core/entries/hideable";
import { HIDING_GROUNDS } from "#core/review/entry-event";
import type { EntryHistory } from "#core/review/entry-history";
import { LENGTHS } from "#core/review/refuse";
import { Cut } from "../cut.tsx";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField, TextField } from "../questions/form-field.tsx";
import { Who } from "./happened.tsx";
import styles from "./moderate.module.css";
import { When } from "./when.tsx";

type ToolsProps = {
  readonly view: EntryView;
  readonly history: EntryHistory;
  /** Id of the moderator who looks. */
  readonly by: string;
  readonly form: FormState;
  readonly token: string;
};

/** The acts of a moderator on an entry, each with its reason, and those that another can take back. */
export function ModeratorTools({ view, history, by, form, token }: ToolsProps) {
  const t = useTranslations("moderate");
  const slug = view.summary.slug;
  const shared = { slug, form, token };
  const texts = HIDEABLE.filter((field) => view.content[field] !== "" && !view.hidden.texts.includes(field));
  return (
    <>
      <section aria-labelledby="acts" className={styles.tool}>
        <h2 id="acts">{t("acts")}</h2>
        {history.acts.length === 0 && <p>{t("noActs")}</p>}
        {history.acts.map((act) => (
          <div key={act.id} className={styles.act}>
            <p>
              {t.rich(`did.${act.did.kind}`, {
                ...(act.did.kind === "hidden" && {
                  ground: t(`grounds.${act.did.ground}`),
                  what:
                    act.did.what.kind === "photograph"
                      ? "photograph"
                      : t(`texts.${act.did.what.field as "title"}`),
                }),
                who: () => <Who by={act.by} />,
                when: () => <When at={act.at} />,
              })}{" "}
              {act.undone && t.rich("undone", { who: () => <Who by={act.undone?.by ?? act.by} /> })}
            </p>
            <p>{act.reason}</p>
            {act.undone === null &&
              (act.by.id === by ? (
                <p className={plain.note}>{t("ownAct")}</p>
              ) : (
                <Tool act="undo" id={act.id} {...shared} token={act.id} />
              ))}
          </div>
        ))}
      </section>
      {!history.locked && <Tool act="lock" id="lock" {...shared} heading={t("heading.lock")} />}
      {history.replacedBy === null && (
        <Tool act="merge" id="merge" {...shared} heading={t("heading.merge")}>
          {(mine) => <LineField form={mine} name="into" prefix="merge-" note={t("intoNote")} />}
        </Tool>
      )}
      {texts.length > 0 && (
        <Tool act="hide" id="text" {...shared} heading={t("heading.text")}>
          {(mine) => (
            <>
              <input type="hidden" name="what" value="text" />
              <input type="hidden" name="revision" value={view.revision.id} />
              <div className={forms.pair}>
                <ChoiceField
                  form={mine}
                  name="field"
                  prefix="text-"
                  label={t("text")}
                  choices={texts.map((field) => [field, t(`texts.${field}`)] as const)}
                />
                <Ground form={mine} prefix="text-" />
              </div>
            </>
          )}
        </Tool>
      )}
      {view.photographs.map((photograph, i) => (
        <Tool
          key={photograph.id}
          act="hide"
          id={photograph.id}
          {...shared}
          heading={t("heading.photograph", { n: i + 1 })}
        >
          {(mine) => (
            <>
              <span className={styles.mat}>
                <Cut image={photograph} alt={photograph.shows} shownAt={200} />
              </span>
              <input type="hidden" name="what" value="photograph" />
              <input type="hidden" name="photograph" value={photograph.id} />
              <Ground form={mine} prefix={`${photograph.id}-`} />
            </>
          )}
        </Tool>
      ))}
    </>
  );
}

type ToolProps = {
  readonly act: "undo" | "lock" | "merge" | "hide";
  /** Sets the forms of one page apart. */
  readonly id: string;
  readonly slug: string;
  readonly form: FormState;
  readonly token: string;
  readonly heading?: string;
  readonly children?: (form: FormState) => ReactNode;
};

function Tool({ act, id, slug, form, token, heading, children }: ToolProps) {
  const t = useTranslations("moderate");
  const mine = form.typed.did === act && form.typed.form_id === id;
  const shown = mine ? form : NOTHING;
  const page = `/entries/${slug}/moderate`;
  return (
    <details className={styles.more} open={mine}>
      <summary className={plain.quiet}>{heading ?? t("undo")}</summary>
      <form method="post" action={`/api/entries/${slug}/${act}`} className={forms.form}>
        <input type="hidden" name="act" value={act === "undo" ? id : `${token}${id.slice(0, 8)}`} />
        <input type="hidden" name="form_id" value={id} />
        <input type="hidden" name="page" value={page} />
        <input type="hidden" name="done" value={page} />
        {children?.(shown)}
        <TextField
          form={shown}
          name="reason"
          prefix={`${id}-`}
          rows={3}
          note={t("reasonNote", { shortest: LENGTHS.act })}
        />
        <button type="submit" className={plain.button}>
          {t(`do.${act}`)}
        </button>
      </form>
    </details>
  );
}

function Ground({ form, prefix }: { readonly form: FormState; readonly prefix: string }) {
  const t = useTranslations("moderate");
  return (
    <ChoiceField
      form={form}
      name="ground"
      prefix={prefix}
      choices={HIDING_GROUNDS.map((ground) => [ground, t(`grounds.${ground}`)] as const)}
    />
  );
}

const NOTHING: FormState = { typed: {}, errors: [] };
