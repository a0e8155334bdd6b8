import type { Metadata } from "next";
import Link from "next/link";
import { useTranslations } from "next-intl";
import { getTranslations } from "next-intl/server";
import type { FileLine } from "#core/object-files/kept-file";
import { may } from "#core/permissions";
import { ObjectLines } from "#ui/objects/object-line";
import { actor } from "#web/actor";
import { objectFilesOf, publishedFiles } from "#web/object-files/reading";
import styles from "../../_ui/objects/objects.module.css";
import plain from "../../_ui/plain.module.css";

export async function generateMetadata(): Promise<Metadata> {
  return { title: (await getTranslations("objectPages"))("title") };
}

/** A member's object files, those that others let them into, and those that are published for everybody. */
export default async function ObjectsPage() {
  const who = await actor();
  const member = who.kind === "member" && may(who, "keep an object file") ? who : null;
  const [lines, published, t] = await Promise.all([
    member ? objectFilesOf(member.id) : [],
    publishedFiles(),
    getTranslations("objectPages"),
  ]);
  const mine = lines.filter(({ access }) => access === "owner");
  const others = published.filter(({ id }) => !lines.some((line) => line.id === id));
  const invited = lines.filter(({ access }) => access !== "owner");
  return (
    <>
      <header className={styles.head}>
        <h1>{t("title")}</h1>
        <p className={plain.lede}>{t("lede")}</p>
        <p>
          <Link href={member ? "/objects/new" : "/sign-in?next=%2Fobjects%2Fnew"} className={plain.button}>
            {t(member ? "open" : "signInToOpen")}
          </Link>
        </p>
      </header>
      <div className={styles.body}>
        {member && <FileList id="mine" lines={mine} none={t("none")} />}
        {invited.length > 0 && <FileList id="invited" lines={invited} none="" />}
        {(!member || others.length > 0) && (
          <FileList id="published" lines={others} none={t("nonePublished")} />
        )}
      </div>
    </>
  );
}

type FileListProps = {
  readonly id: "mine" | "invited" | "published";
  readonly lines: readonly FileLine[];
  readonly none: string;
};

function FileList({ id, lines, none }: FileListProps) {
  const t = useTranslations("objectPages");
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{t(id)}</h2>
      {lines.length === 0 && <p>{none}</p>}
      <ObjectLines lines={lines} />
    </section>
  );
}
