import Link from "next/link";
import { useTranslations } from "next-intl";

/** Where an entry came from, when it was made of an open question. */
export function FromQuestion({ id }: { readonly id: string }) {
  const t = useTranslations("questions");
  return <p>{t.rich("entryFrom", { link: (words) => <Link href={`/questions/${id}`}>{words}</Link> })}</p>;
}
