import { useFormatter, useTranslations } from "next-intl";
import type { DemoMember } from "#core/members/demo-member";
import type { Role } from "#core/members/member";
import plain from "../plain.module.css";
import styles from "./members.module.css";

type DemoAccountsProps = { readonly members: readonly DemoMember[]; readonly next: string };

const SHOWN = ["contributor", "reviewer", "moderator", "administrator"] as const;

/** The demo's ready accounts: one a role first, and the others folded away. */
export function DemoAccounts({ members, next }: DemoAccountsProps) {
  const t = useTranslations("signIn");
  const first = SHOWN.flatMap((role) => members.find((each) => highest(each) === role) ?? []);
  const others = members.filter((each) => !first.includes(each));
  return (
    <section className={styles.section} aria-labelledby="demo-accounts">
      <h2 id="demo-accounts">{t("demoHeading")}</h2>
      <p>{t("demoNote")}</p>
      <Accounts members={first} next={next} />
      <details>
        <summary className={plain.quiet}>{t("demoMore")}</summary>
        <Accounts members={others} next={next} />
      </details>
    </section>
  );
}

function Accounts({ members, next }: DemoAccountsProps) {
  const t = useTranslations();
  const format = useFormatter();
  return (
    <ul className={styles.lines}>
      {members.map((member) => (
        <li key={member.id}>
          <div>
            <strong>
              {member.name}, {format.list(rolesShown(member).map((role) => t(`roles.${role}`)))}
            </strong>
            <span className={plain.note}>
              {rolesShown(member)
                .map((role) =>
                  t(`can.${role}`, {
                    fields: format.list(
                      member.fields.map((field) => t(`fieldNames.${field}`)),
                      { type: "unit" },
                    ),
                  }),
                )
                .join(" ")}
            </span>
          </div>
          <form method="post" action="/api/sign-in/demo">
            <input type="hidden" name="next" value={next} />
            <input type="hidden" name="member" value={member.id} />
            <button type="submit" className={plain.quiet}>
              {t("signIn.demoSignIn", { name: member.name })}
            </button>
          </form>
        </li>
      ))}
    </ul>
  );
}

type Shown = Exclude<Role, "reader">;

const rolesShown = ({ roles }: DemoMember): readonly Shown[] =>
  roles.length === 0 ? ["contributor"] : roles;

const highest = (member: DemoMember): Shown | undefined => rolesShown(member).at(-1);
