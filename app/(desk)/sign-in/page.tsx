import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { nextPath } from "#core/members/next-path";
import { DemoAccounts } from "#ui/members/demo-accounts";
import { SignInForm } from "#ui/members/sign-in-form";
import { Said } from "#ui/said";
import { actor } from "#web/actor";
import { keptForm, waysToSignIn } from "#web/reading-members";
import styles from "../../_ui/members/members.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("signIn");
  return { title: t("title"), robots: { index: false } };
}

export default async function SignInPage({ searchParams }: Props) {
  const { next: asked, form: name, said } = await searchParams;
  const [who, ways, t] = await Promise.all([actor(), waysToSignIn(), getTranslations("signIn")]);
  const next = nextPath(typeof asked === "string" ? asked : undefined);
  const form = keptForm(name) ?? { typed: {}, errors: [] };
  return (
    <div className={styles.narrow}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      {said === "signed-out" && who.kind === "reader" && <Said>{t("signedOut")}</Said>}
      {who.kind === "member" && <p>{t("already", { name: who.name })}</p>}
      <SignInForm form={form} next={next} elsewhere={ways.elsewhere} />
      {ways.demo.length > 0 && <DemoAccounts members={ways.demo} next={next} />}
    </div>
  );
}
