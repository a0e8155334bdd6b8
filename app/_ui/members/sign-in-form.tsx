import Link from "next/link";
import { useTranslations } from "next-intl";
import plain from "../plain.module.css";
import styles from "../questions/form.module.css";
import { type FormState, LineField, OtherErrors } from "../questions/form-field.tsx";

type SignInFormProps = {
  readonly form: FormState;
  /** Where to go on. */
  readonly next: string;
  /** Name of the OpenID Connect provider; null when there is none. */
  readonly elsewhere: string | null;
};

/** E-mail address and password, or the provider elsewhere. */
export function SignInForm({ form, next, elsewhere }: SignInFormProps) {
  const t = useTranslations("signIn");
  return (
    <>
      <form method="post" action="/api/sign-in/password" className={styles.form}>
        <OtherErrors form={form} shown={["email", "password"]} />
        <input type="hidden" name="next" value={next} />
        <LineField form={form} name="email" type="email" autoComplete="username" />
        <LineField form={form} name="password" type="password" autoComplete="current-password" />
        <button type="submit" className={plain.button}>
          {t("go")}
        </button>
      </form>
      {elsewhere !== null && (
        <form method="post" action="/api/sign-in/elsewhere">
          <input type="hidden" name="next" value={next} />
          <button type="submit" className={plain.quiet}>
            {t("elsewhere", { name: elsewhere })}
          </button>
        </form>
      )}
      <p>
        {t.rich("join", {
          link: (words) => <Link href={`/join?next=${encodeURIComponent(next)}`}>{words}</Link>,
        })}
      </p>
    </>
  );
}
