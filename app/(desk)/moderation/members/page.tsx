import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { MemberActs } from "#ui/members/member-acts";
import { MembersPaging, MembersSearch } from "#ui/members/members-search";
import { MembersTable } from "#ui/members/members-table";
import { StandingForms } from "#ui/members/standing-forms";
import { FieldsWords, RolesWords } from "#ui/members/standing-words";
import { OtherErrors } from "#ui/questions/form-field";
import { Said } from "#ui/said";
import { actorWhoMay } from "#web/actor";
import { keptForm, listMembers, memberActs, showMember } from "#web/reading-members";
import styles from "../../../_ui/members/members.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

const PATH = "/moderation/members";
const SAID = ["reviewer", "moderator", "suspend", "restore"] as const;

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("standing");
  return { title: t("title"), robots: { index: false } };
}

/** All members, or one whose standing is to change; and what was done. */
export default async function ModerateMembersPage({ searchParams }: Props) {
  const query = await searchParams;
  const chosen = typeof query.member === "string" ? query.member : null;
  const here = chosen === null ? PATH : `${PATH}?member=${encodeURIComponent(chosen)}`;
  await actorWhoMay("appoint a reviewer", here);
  return chosen === null ? <All query={query} /> : <One id={chosen} query={query} here={here} />;
}

type Query = Awaited<Props["searchParams"]>;

async function All({ query }: { readonly query: Query }) {
  const words = (typeof query.words === "string" ? query.words : "").trim().slice(0, 100);
  const page = Math.max(1, Math.min(10_000, Math.floor(Number(query.page)) || 1));
  const [{ members, more }, events, t, m] = await Promise.all([
    listMembers(words, page),
    memberActs(null),
    getTranslations("standing"),
    getTranslations("members"),
  ]);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      <MembersSearch path={PATH} words={words} />
      {members.length === 0 ? (
        <p>{m("nothing", { words })}</p>
      ) : (
        <MembersTable members={members} to={({ id }) => `${PATH}?member=${id}`} />
      )}
      <MembersPaging path={PATH} words={words} page={page} more={more} />
      <section className={styles.section} aria-labelledby="acts">
        <h2 id="acts">{t("acts")}</h2>
        <MemberActs events={events} />
      </section>
    </div>
  );
}

async function One({
  id,
  query,
  here,
}: {
  readonly id: string;
  readonly query: Query;
  readonly here: string;
}) {
  const [member, by, events, t, m] = await Promise.all([
    showMember(id),
    actorWhoMay("appoint a reviewer", here),
    memberActs(id),
    getTranslations("standing"),
    getTranslations("members"),
  ]);
  if (!member) notFound();
  const form = keptForm(query.form) ?? { typed: {}, errors: [] };
  const said = SAID.find((each) => each === query.said);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <p>
          <Link href={PATH}>{t("back")}</Link>
        </p>
        <h1>{member.name}</h1>
        {said && <Said>{t(`said.${said}`)}</Said>}
        <OtherErrors form={form} shown={["reason"]} />
        <p className={styles.roles}>
          <RolesWords of={member} />
          {member.suspendedAt !== null && `, ${m("suspended")}`}
        </p>
        {member.fields.length > 0 && (
          <p>
            {m("reviews")}: <FieldsWords fields={member.fields} />
          </p>
        )}
      </header>
      <StandingForms member={member} by={by} state={form} />
      <section className={styles.section} aria-labelledby="acts">
        <h2 id="acts">{t("acts")}</h2>
        <MemberActs events={events} />
      </section>
    </div>
  );
}
