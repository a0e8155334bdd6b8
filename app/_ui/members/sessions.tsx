import { useFormatter, useTranslations } from "next-intl";
import type { OpenSession } from "#core/members/account";
import { browserName } from "#core/members/browser-name";
import plain from "../plain.module.css";
import styles from "./members.module.css";

type SessionsProps = { readonly sessions: readonly OpenSession[]; readonly current: string };

/** Where the member is signed in, and the way out of each. */
export function Sessions({ sessions, current }: SessionsProps) {
  const t = useTranslations("account");
  return (
    <section className={styles.section} aria-labelledby="sessions">
      <h2 id="sessions">{t("sessions")}</h2>
      <ul className={styles.lines}>
        {sessions.map((session) => (
          <li key={session.id}>
            <SessionWords session={session} />
            {session.id === current ? (
              <span className={plain.note}>{t("thisOne")}</span>
            ) : (
              <form method="post" action="/api/account/end-session">
                <input type="hidden" name="session" value={session.id} />
                <button type="submit" className={plain.quiet}>
                  {t("end")}
                </button>
              </form>
            )}
          </li>
        ))}
      </ul>
      {sessions.length > 1 && (
        <form method="post" action="/api/account/sign-out-elsewhere">
          <button type="submit" className={plain.quiet}>
            {t("endElsewhere")}
          </button>
        </form>
      )}
    </section>
  );
}

function SessionWords({ session }: { readonly session: OpenSession }) {
  const t = useTranslations("account");
  const format = useFormatter();
  const { browser, system } = browserName(session.userAgent);
  const named =
    browser !== null && system !== null
      ? t("browserOn", { browser, system })
      : (browser ?? system ?? t("unknownBrowser"));
  const moment = (at: string) => format.dateTime(new Date(at), { dateStyle: "medium", timeStyle: "short" });
  return (
    <span>
      {t("session", { browser: named, since: moment(session.createdAt), seen: moment(session.lastSeenAt) })}
    </span>
  );
}
