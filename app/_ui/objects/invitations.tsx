import { useTranslations } from "next-intl";
import { type KeptFile, WAYS } from "#core/object-files/kept-file";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { ChoiceField, type FormState, LineField } from "../questions/form-field.tsx";
import styles from "./objects.module.css";

/** Who is let into the file by name, and the form that lets another in. */
export function Invitations({ kept, form }: { readonly kept: KeptFile; readonly form: FormState }) {
  const t = useTranslations("objectPages");
  const action = `/api/objects/${kept.id}`;
  return (
    <section aria-labelledby="invited">
      <h2 id="invited">{t("sharing.invited")}</h2>
      {kept.invited.length === 0 && <p>{t("sharing.nobody")}</p>}
      <ul className={styles.list}>
        {kept.invited.map(({ id, name, way }) => (
          <li key={id}>
            <p>
              {name}: {t(`ways.${way}`)}
            </p>
            <form method="post" action={`${action}/end-invitation`} encType="multipart/form-data">
              <input type="hidden" name="member" value={id} />
              <button type="submit" className={plain.quiet} aria-label={t("sharing.endOf", { name })}>
                {t("sharing.end")}
              </button>
            </form>
          </li>
        ))}
      </ul>
      <form method="post" action={`${action}/invite`} encType="multipart/form-data" className={forms.form}>
        <div className={forms.pair}>
          <LineField form={form} name="invited" label={t("sharing.who")} note={t("sharing.whoNote")} />
          <ChoiceField
            form={form}
            name="way"
            label={t("sharing.way")}
            choices={WAYS.map((way) => [way, t(`ways.${way}`)] as const)}
          />
        </div>
        <button type="submit" className={plain.button}>
          {t("sharing.invite")}
        </button>
      </form>
    </section>
  );
}
