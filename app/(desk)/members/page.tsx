import type { Metadata } from "next";
import { getTranslations } from "next-intl/server";
import { MembersPaging, MembersSearch } from "#ui/members/members-search";
import { MembersTable } from "#ui/members/members-table";
import { listMembers } from "#web/reading-members";
import styles from "../../_ui/members/members.module.css";

type Props = { readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>> };

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations("members");
  return { title: t("title") };
}

export default async function MembersPage({ searchParams }: Props) {
  const { words: asked, page: number } = await searchParams;
  const words = (typeof asked === "string" ? asked : "").trim().slice(0, 100);
  const page = Math.max(1, Math.min(10_000, Math.floor(Number(number)) || 1));
  const [{ members, more }, t] = await Promise.all([listMembers(words, page), getTranslations("members")]);
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p>{t("lede")}</p>
      </header>
      <MembersSearch path="/members" words={words} />
      {members.length === 0 ? (
        <p>{t("nothing", { words })}</p>
      ) : (
        <MembersTable members={members} to={({ id }) => `/members/${id}`} />
      )}
      <MembersPaging path="/members" words={words} page={page} more={more} />
    </div>
  );
}
