import { useFormatter, useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import plain from "../plain.module.css";
import { Said } from "../said.tsx";
import { AnswerAddress } from "./answer-address.tsx";
import styles from "./look-up-keeping.module.css";

type LookUpKeepingProps = {
  readonly view: LookUpView;
  readonly mine: boolean;
  /** What was just done, from the address. */
  readonly said: string | string[] | undefined;
};

/** How long the look-up is kept, the address of its answer, and what gave it. */
export function LookUpKeeping({ view, mine, said }: LookUpKeepingProps) {
  const t = useTranslations("keeping");
  const format = useFormatter();
  const day = (iso: string) => format.dateTime(new Date(iso), { dateStyle: "long" });
  const { decode, preprocess, embed, search } = view.timings;
  const action = (verb: string) => `/api/look-ups/${view.id}/${verb}`;
  return (
    <section className={styles.keeping} aria-labelledby="keeping">
      <h2 id="keeping">{t("heading")}</h2>
      {mine && (said === "kept" || said === "let-go") && <Said>{t(`said.${said}`)}</Said>}
      <p>{view.expiresAt === null ? t("kept") : t("until", { day: day(view.expiresAt) })}</p>
      {mine && (
        <div className={styles.actions}>
          <form method="post" action={action(view.expiresAt === null ? "let-go" : "keep")}>
            <button type="submit" className={plain.quiet}>
              {view.expiresAt === null ? t("letGo") : t("keep")}
            </button>
          </form>
          <details className={styles.delete}>
            <summary className={plain.quiet}>{t("delete")}</summary>
            <form method="post" action={action("delete")}>
              <p>{t("deleteSure")}</p>
              <button type="submit" className={plain.button}>
                {t("deleteYes")}
              </button>
            </form>
          </details>
        </div>
      )}
      <dl className={styles.facts}>
        <div>
          <dt>{t("address")}</dt>
          <dd>
            <AnswerAddress path={`/look-ups/${view.id}`} />
            {". "}
            {view.expiresAt === null ? t("worksKept") : t("worksUntil", { day: day(view.expiresAt) })}
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
