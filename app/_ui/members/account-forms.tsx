import { useTranslations } from "next-intl";
import type { Account } from "#core/members/account";
import { PASSWORD_LENGTH } from "#core/members/parse-account";
import plain from "../plain.module.css";
import styles from "../questions/form.module.css";
import { type FormState, LineField, TextField } from "../questions/form-field.tsx";
import members from "./members.module.css";

type FormProps = { readonly account: Account; readonly form: FormState };

/** What others read of the member. */
export function ProfileForm({ account, form }: FormProps) {
  const t = useTranslations("account");
  const kept = { name: account.name, about_you: account.about };
  const shown = { ...form, typed: { ...kept, ...form.typed } };
  return (
    <form method="post" action="/api/account/profile" className={styles.form}>
      <LineField form={shown} name="name" autoComplete="name" />
      <TextField form={shown} name="about_you" note={t("aboutNote")} optional />
      <button type="submit" className={plain.button}>
        {t("save")}
      </button>
    </form>
  );
}

/** Another password; who has none sets one. */
export function PasswordForm({ account, form }: FormProps) {
  const t = useTranslations("account");
  const join = useTranslations("join");
  return (
    <form method="post" action="/api/account/password" className={styles.form}>
      <p className={plain.note}>{account.hasPassword ? t("passwordNote") : t("noPassword")}</p>
      {/* So that what keeps passwords for people knows whose it is. */}
      <input type="hidden" name="username" value={account.email} autoComplete="username" />
      {account.hasPassword && (
        <LineField form={form} name="current" type="password" autoComplete="current-password" />
      )}
      <LineField
        form={form}
        name="new_password"
        type="password"
        autoComplete="new-password"
        note={join("passwordNote", PASSWORD_LENGTH)}
      />
      <button type="submit" className={plain.button}>
        {account.hasPassword ? t("changePassword") : t("setPassword")}
      </button>
    </form>
  );
}

/** Ties an account at the provider elsewhere to this one. */
export function TieElsewhere({ name }: { readonly name: string }) {
  const t = useTranslations("account");
  return (
    <section className={members.section} aria-labelledby="elsewhere">
      <h2 id="elsewhere">{t("elsewhere")}</h2>
      <form method="post" action="/api/sign-in/elsewhere" className={styles.form}>
        <p className={plain.note}>{t("elsewhereNote")}</p>
        <input type="hidden" name="next" value="/account" />
        <button type="submit" className={plain.quiet}>
          {t("elsewhereGo", { name })}
        </button>
      </form>
    </section>
  );
}
