import { useTranslations } from "next-intl";
import type { KeptFile } from "#core/object-files/kept-file";
import { AnswerAddress } from "../look-up/answer-address.tsx";
import plain from "../plain.module.css";
import { When } from "../review/when.tsx";
import styles from "./objects.module.css";

type ShareLinkProps = {
  readonly kept: KeptFile;
  /** Path of a link that was just made; shown this once. */
  readonly address: string | null;
};

/** The link by which whoever has it may read the file, without an account. */
export function ShareLink({ kept, address }: ShareLinkProps) {
  const t = useTranslations("objectPages.sharing");
  const action = `/api/objects/${kept.id}`;
  return (
    <section aria-labelledby="link">
      <h2 id="link">{t("link")}</h2>
      <p>{t("linkNote")}</p>
      {address && (
        <div className={styles.against}>
          <p>{t("linkOnce")}</p>
          <p>
            <AnswerAddress path={address} />
          </p>
        </div>
      )}
      {kept.sharedAt && (
        <p>{t.rich("linkSince", { when: () => <When at={kept.sharedAt?.toISOString() ?? ""} /> })}</p>
      )}
      <div className={styles.buttons}>
        <Act action={`${action}/share`} words={t(kept.sharedAt ? "linkAnew" : "linkMake")} />
        {kept.sharedAt && <Act action={`${action}/revoke`} words={t("revoke")} />}
      </div>
    </section>
  );
}

/** A button that is a whole form. */
export function Act({ action, words }: { readonly action: string; readonly words: string }) {
  return (
    <form method="post" action={action} encType="multipart/form-data">
      <input type="hidden" name="act" value="1" />
      <button type="submit" className={plain.quiet}>
        {words}
      </button>
    </form>
  );
}
