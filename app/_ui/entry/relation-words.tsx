import { useFormatter, useTranslations } from "next-intl";
import type { Related } from "./related-once.ts";

/** All that one entry is to another, in one phrase: "Preceded by, and a variant". */
export function RelationWords({ kinds }: { readonly kinds: Related["kinds"] }) {
  const t = useTranslations("entry");
  const format = useFormatter();
  const [first, ...others] = kinds;
  if (!first) return null;
  if (others.length === 0) return t(`relations.${first}`);
  return t("relationsTogether", {
    first: t(`relations.${first}`),
    others: format.list(others.map((kind) => t(`relationsAlso.${kind}`))),
  });
}
