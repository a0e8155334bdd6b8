import Link from "next/link";
import { useTranslations } from "next-intl";
import plain from "../plain.module.css";

type PublishLinkProps = {
  readonly lookUp: string;
  /** Only the owner of a look-up may publish it. */
  readonly mine: boolean;
  /** The question that was published from it already. */
  readonly question: string | null;
};

/** The way from an answer in which nothing fits to a question that others can answer. */
export function PublishLink({ lookUp, mine, question }: PublishLinkProps) {
  const t = useTranslations("questions");
  if (question !== null)
    return (
      <p>
        <Link href={`/questions/${question}`}>{t("toQuestion")}</Link>
      </p>
    );
  if (!mine) return null;
  return (
    <p>
      <Link href={`/look-ups/${lookUp}/publish`} className={plain.quiet}>
        {t("publishLink")}
      </Link>
    </p>
  );
}
