import { useFormatter, useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import plain from "../plain.module.css";
import styles from "./look-up-keeping.module.css";

/** How long the look-up is kept, its lasting address, and what gave the answer. */
export function LookUpKeeping({ view, mine }: { readonly view: LookUpView; readonly mine: boolean }) {
  const t = useTranslations("keeping");
  const format = useFormatter();
  const day = (iso: string) => format.dateTime(new Date(iso), { dateStyle: "long" });
  const { decode, preprocess, embed, search } = view.timings;
  const action = (verb: string) => `/api/look-ups/${view.id}/${verb}`;
  return (
    <section className={styles.keeping} aria-labelledby="keeping">
      <h2 id="keeping">{t("heading")}</h2>
      <p>{view.expiresAt === null ? t("kept") : t("until", { day: day(view.expiresAt) })}</p>
      {mine && (
        <div className={styles.actions}>
          <form method="post" action={action(view.expiresAt === null ? "let-go" : "keep")}>
            <button type="submit" className={plain.quiet}>
              {view.expiresAt === null ? t("letGo") : t("keep")}
            </button>
          </form>
          <form method="post" action={action("delete")}>
            <button type="submit" className={plain.quiet}>
              {t("delete")}
            </button>
          </form>
        </div>
      )}
      <dl className={styles.facts}>
        <div>
          <dt>{t("address")}</dt>
          <dd>
            <a href={`/look-ups/${view.id}`}>{`/look-ups/${view.id}`}</a>
          </dd>
        </div>
        <div>
          <dt>{t("asked")}</dt>
          <dd>{format.dateTime(new Date(view.createdAt), { dateStyle: "long", timeStyle: "short" })}</dd>
        </div>
        <div>
          <dt>{t("model")}</dt>
          <dd>{view.model}</dd>
        </div>
        <div>
          <dt>{t("took")}</dt>
          <dd>
            {t("tookParts", {
              total: format.number(decode + preprocess + embed + search, { maximumFractionDigits: 0 }),
              decode: format.number(decode, { maximumFractionDigits: 0 }),
              preprocess: format.number(preprocess, { maximumFractionDigits: 0 }),
              embed: format.number(embed, { maximumFractionDigits: 0 }),
              search: format.number(search, { maximumFractionDigits: 0 }),
            })}
          </dd>
        </div>
      </dl>
    </section>
  );
}
