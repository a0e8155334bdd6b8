import Link from "next/link";
import { useTranslations } from "next-intl";
import type { Member } from "#core/members/account";
import plain from "../plain.module.css";
import styles from "./members.module.css";
import { FieldsWords, RolesWords } from "./standing-words.tsx";

type MembersTableProps = {
  readonly members: readonly Member[];
  /** Where a name leads. */
  readonly to: (member: Member) => string;
};

/** Who is here, what they are, and what they review. */
export function MembersTable({ members, to }: MembersTableProps) {
  const t = useTranslations("members");
  return (
    <table className={styles.table}>
      <caption className={plain.hidden}>{t("tableCaption")}</caption>
      <thead>
        <tr>
          <th scope="col">{t("name")}</th>
          <th scope="col">{t("roles")}</th>
          <th scope="col">{t("fields")}</th>
        </tr>
      </thead>
      <tbody>
        {members.map((member) => (
          <tr key={member.id}>
            <th scope="row">
              <Link href={to(member)}>{member.name}</Link>
            </th>
            <td>
              <RolesWords of={member} />
              {member.suspendedAt !== null && `, ${t("suspended")}`}
            </td>
            <td>
              {member.fields.length > 0 ? (
                <FieldsWords fields={member.fields} />
              ) : (
                <span className={plain.note}>{t("noFields")}</span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
