import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import { FIELDS } from "#core/entries/vocabulary";
import type { Member } from "#core/members/account";
import type { ActingMember } from "#core/members/member";
import { SHORTEST_REASON } from "#core/members/parse-standing";
import { may } from "#core/permissions";
import plain from "../plain.module.css";
import form from "../questions/form.module.css";
import { type FormState, TextField } from "../questions/form-field.tsx";
import styles from "./members.module.css";

type StandingFormsProps = { readonly member: Member; readonly by: ActingMember; readonly state: FormState };

/** What whoever looks may do about a member's standing, each with its reason. */
export function StandingForms({ member, by, state }: StandingFormsProps) {
  const t = useTranslations("standing");
  if (member.id === by.id) return <p>{t("oneself")}</p>;
  const isOfHouse = member.isModerator || member.isAdministrator;
  const suspends = !isOfHouse || by.roles.includes("administrator");
  const suspended = member.suspendedAt !== null;
  return (
    <>
      {!suspended && (
        <ActForm member={member} act="reviewer" state={state} go={t("reviewer")}>
          <FieldBoxes member={member} state={state} />
        </ActForm>
      )}
      {!suspended && may(by, "appoint a moderator") && (
        <ActForm
          member={member}
          act="moderator"
          state={state}
          go={member.isModerator ? t("moderatorNo") : t("moderatorYes")}
        >
          <input type="hidden" name="moderator" value={member.isModerator ? "no" : "yes"} />
        </ActForm>
      )}
      {suspends ? (
        <ActForm
          member={member}
          act={suspended ? "restore" : "suspend"}
          state={state}
          go={suspended ? t("restore") : t("suspend")}
        >
          {!suspended && <p className={plain.note}>{t("suspendNote")}</p>}
        </ActForm>
      ) : (
        <p>{t("toOthers")}</p>
      )}
    </>
  );
}

type Act = "reviewer" | "moderator" | "suspend" | "restore";
type ActFormProps = {
  readonly member: Member;
  readonly act: Act;
  readonly state: FormState;
  readonly go: string;
  readonly children: ReactNode;
};

/** One act; only the form that was refused shows what was typed into it. */
function ActForm({ member, act, state, go, children }: ActFormProps) {
  const t = useTranslations("standing");
  const mine = state.typed.act === act ? state : { typed: {}, errors: [] };
  return (
    <section className={styles.section} aria-labelledby={`act-${act}`}>
      <h2 id={`act-${act}`}>{t(`headings.${act === "restore" ? "suspend" : act}`)}</h2>
      <form method="post" action={`/api/members/${member.id}/${act}`} className={form.form}>
        {children}
        <TextField
          form={mine}
          name="reason"
          prefix={`${act}-`}
          rows={2}
          note={t("reasonNote", { shortest: SHORTEST_REASON })}
        />
        <button type="submit" className={plain.button}>
          {go}
        </button>
      </form>
    </section>
  );
}

function FieldBoxes({ member, state }: { readonly member: Member; readonly state: FormState }) {
  const t = useTranslations();
  const typed = state.typed.act === "reviewer";
  return (
    <fieldset className={styles.boxes}>
      <legend className={plain.label}>{t("standing.fields")}</legend>
      {FIELDS.map((field) => (
        <label key={field} className={form.check}>
          <input
            type="checkbox"
            name={`field ${field}`}
            value="yes"
            defaultChecked={typed ? state.typed[`field ${field}`] === "yes" : member.fields.includes(field)}
          />
          {t(`fieldNames.${field}`)}
        </label>
      ))}
      <p className={`${plain.note} ${form.wide}`}>{t("standing.reviewerNote")}</p>
    </fieldset>
  );
}
