import Link from "next/link";
import { useTranslations } from "next-intl";
import { JOIN_FIELDS, PASSWORD_LENGTH } from "#core/members/parse-account";
import plain from "../plain.module.css";
import styles from "../questions/form.module.css";
import { type FormState, LineField, OtherErrors } from "../questions/form-field.tsx";

/** Name, e-mail address and password. */
export function JoinForm({ form, next }: { readonly form: FormState; readonly next: string }) {
  const t = useTranslations("join");
  return (
    <>
      <form method="post" action="/api/join" className={styles.form}>
        <OtherErrors form={form} shown={JOIN_FIELDS} />
        <input type="hidden" name="next" value={next} />
        <LineField form={form} name="name" note={t("nameNote")} autoComplete="name" />
        <LineField form={form} name="email" type="email" autoComplete="username" />
        <LineField
          form={form}
          name="password"
          type="password"
          autoComplete="new-password"
          note={t("passwordNote", PASSWORD_LENGTH)}
        />
        <button type="submit" className={plain.button}>
          {t("go")}
        </button>
      </form>
      <p>
        {t.rich("signIn", {
          link: (words) => <Link href={`/sign-in?next=${encodeURIComponent(next)}`}>{words}</Link>,
        })}
      </p>
    </>
  );
}
