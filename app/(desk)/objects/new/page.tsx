import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { FAMILIES } from "#core/object-files/vocabulary";
import { ChoiceField, LineField, OtherErrors, TextField } from "#ui/questions/form-field";
import { actorWhoMay } from "#web/actor";
import { keptForm } from "#web/object-files/reading";
import styles from "../../../_ui/objects/objects.module.css";
import plain from "../../../_ui/plain.module.css";
import forms from "../../../_ui/questions/form.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("openTitle"), robots: { index: false } };
}

/** Opens a file for one object. */
export default async function NewObjectPage({ searchParams }: Props) {
  await actorWhoMay("keep an object file", "/objects/new");
  const [query, t] = await Promise.all([searchParams, getTranslations("objectPages")]);
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const choices = FAMILIES.map((each) => [each, t(`families.${each}`)] as const);
  return (
    <>
      <header className={styles.head}>
        <p className={plain.note}>
          <Link href="/objects">{t("back")}</Link>
        </p>
        <h1>{t("openTitle")}</h1>
        <p className={plain.lede}>{t("openLede")}</p>
      </header>
      <form method="post" action="/api/objects" encType="multipart/form-data" className={forms.form}>
        <OtherErrors form={form} shown={["title", "family", "description"]} />
        <LineField form={form} name="title" label={t("fields.title")} note={t("fields.titleNote")} />
        <ChoiceField
          form={form}
          name="family"
          label={t("fields.family")}
          choices={[["", t("choose")], ...choices]}
        />
        <TextField form={form} name="description" label={t("fields.description")} optional />
        <button type="submit" className={plain.button}>
          {t("openIt")}
        </button>
      </form>
    </>
  );
}
