import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { getTranslations } from "next-intl/server";
import { may } from "#core/permissions";
import { Interests } from "#ui/members/interests";
import { Contributions, VotesCast } from "#ui/members/member-deeds";
import { DayWords, FieldsWords, RolesWords } from "#ui/members/standing-words";
import { actor } from "#web/actor";
import { namesOfInterests, showMember } from "#web/reading-members";
import { contributionsOf, votesOf } from "#web/reading-reviews";
import styles from "../../../_ui/members/members.module.css";

type Props = { readonly params: Promise<{ readonly id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await showMember((await params).id))?.name ?? "" };
}

/** Who a member is: roles and fields, declared interests, what they wrote and how they voted. */
export default async function MemberPage({ params }: Props) {
  const member = await showMember((await params).id);
  if (!member) notFound();
  const [who, names, contributions, votes, t] = await Promise.all([
    actor(),
    namesOfInterests(member.interests),
    contributionsOf(member.id),
    votesOf(member.id),
    getTranslations("members"),
  ]);
  const { suspendedAt } = member;
  return (
    <article className={styles.page}>
      <header className={styles.head}>
        <p className={styles.roles}>
          <RolesWords of={member} />
        </p>
        <h1>{member.name}</h1>
        {member.fields.length > 0 && (
          <p>
            {t("reviews")}: <FieldsWords fields={member.fields} />
          </p>
        )}
        <p>{t.rich("since", { date: () => <DayWords at={member.createdAt} /> })}</p>
        {suspendedAt !== null && (
          <p>{t.rich("suspendedSince", { date: () => <DayWords at={suspendedAt} /> })}</p>
        )}
        {member.about && <p className={styles.text}>{member.about}</p>}
        {may(who, "appoint a reviewer") && (
          <p>
            <Link href={`/moderation/members?member=${member.id}`}>{t("moderate")}</Link>
          </p>
        )}
      </header>
      <section className={styles.section} aria-labelledby="interests">
        <h2 id="interests">{t("interests")}</h2>
        <Interests interests={member.interests} names={names} />
      </section>
      <Contributions links={contributions} />
      <VotesCast links={votes} />
    </article>
  );
}
