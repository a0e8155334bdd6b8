import type { Metadata } from "next";
import Link from "next/link";
import { getTranslations } from "next-intl/server";
import { PROFILE_FIELDS } from "#core/members/parse-account";
import { INTEREST_FIELDS } from "#core/members/parse-interest";
import { PasswordForm, ProfileForm, TieElsewhere } from "#ui/members/account-forms";
import { DeclareForm, Interests } from "#ui/members/interests";
import { Sessions } from "#ui/members/sessions";
import { FieldsWords, RolesWords } from "#ui/members/standing-words";
import { OtherErrors } from "#ui/questions/form-field";
import { Said } from "#ui/said";
import { actorWhoMay, currentSession } from "#web/actor";
import { listMakers } from "#web/reading";
import { isOfDemo, keptForm, namesOfInterests, openSessions, waysToSignIn } from "#web/reading-members";
import styles from "../../_ui/members/members.module.css";
import plain from "../../_ui/plain.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

const SAID = [
  "joined",
  "profile",
  "password",
  "end-session",
  "sign-out-elsewhere",
  "declare",
  "end-interest",
] as const;
const SHOWN = [...PROFILE_FIELDS, "current", "new_password", ...INTEREST_FIELDS];

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("account");
  return { title: t("title"), robots: { index: false } };
}

export default async function AccountPage({ searchParams }: Props) {
  const { said, form: name } = await searchParams;
  await actorWhoMay("change one's account", "/account");
  const account = (await currentSession())?.account;
  if (!account) return null;
  const [{ sessions, current }, ofDemo, ways, names, makers, t, m] = await Promise.all([
    openSessions(),
    isOfDemo(account.id),
    waysToSignIn(),
    namesOfInterests(account.interests),
    listMakers(""),
    getTranslations("account"),
    getTranslations("members"),
  ]);
  const form = keptForm(name) ?? { typed: {}, errors: [] };
  const words = SAID.find((each) => each === said);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        {words && <Said>{t(`said.${words}`)}</Said>}
        <OtherErrors form={form} shown={SHOWN} />
        <p className={styles.roles}>
          {account.name}, <RolesWords of={account} />
        </p>
        {account.fields.length > 0 && (
          <p>
            {m("reviews")}: <FieldsWords fields={account.fields} />
          </p>
        )}
        <p>
          {account.email} <span className={plain.note}>{t("emailNote")}</span>
        </p>
        <p>
          <Link href={`/members/${account.id}`}>{t("shown")}</Link>
        </p>
      </header>
      <section className={styles.section} aria-labelledby="interests">
        <h2 id="interests">{t("interests")}</h2>
        <p>{t("interestsNote")}</p>
        <Interests interests={account.interests} names={names} own />
        <h3>{t("declare")}</h3>
        <DeclareForm state={form} makers={makers} />
      </section>
      <section className={styles.section} aria-labelledby="profile">
        <h2 id="profile">{t("profile")}</h2>
        <ProfileForm account={account} form={form} />
      </section>
      <section className={styles.section} aria-labelledby="change-password">
        <h2 id="change-password">{t("password")}</h2>
        {ofDemo ? <p>{t("demoPassword")}</p> : <PasswordForm account={account} form={form} />}
      </section>
      {ways.elsewhere !== null && !ofDemo && <TieElsewhere name={ways.elsewhere} />}
      <Sessions sessions={sessions} current={current} />
    </div>
  );
}
