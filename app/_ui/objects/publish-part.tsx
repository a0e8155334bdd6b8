import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { When } from "../review/when.tsx";
import { Act } from "./share-link.tsx";

/** Publishing: anybody may read the file, and entries may cite it. */
export function PublishPart({ kept }: { readonly kept: KeptFile }) {
  const t = useTranslations("objectPages.sharing");
  const { publishedAt } = kept;
  const action = `/api/objects/${kept.id}`;
  return (
    <section aria-labelledby="publish">
      <h2 id="publish">{t("publish")}</h2>
      <p>{t("publishNote")}</p>
      {publishedAt ? (
        <>
          <p>{t.rich("publishedSince", { when: () => <When at={publishedAt.toISOString()} /> })}</p>
          <Act action={`${action}/end-publication`} words={t("publishEnd")} />
        </>
      ) : (
        <Act action={`${action}/publish`} words={t("publishNow")} />
      )}
    </section>
  );
}
