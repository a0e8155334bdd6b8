import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { MemberEvent } from "#core/members/account";
import plain from "../plain.module.css";
import styles from "./members.module.css";
import { DayWords } from "./standing-words.tsx";

/** Appointments and suspensions, the latest first, each with who did it and why. */
export function MemberActs({ events }: { readonly events: readonly MemberEvent[] }) {
  const t = useTranslations("standing");
  if (events.length === 0) return <p>{t("noActs")}</p>;
  return (
    <ol className={styles.lines}>
      {events.map((event) => (
        <li key={`${event.at} ${event.type} ${event.member.id}`}>
          <div>
            <Link href={`/members/${event.member.id}`}>
              <EventWords event={event} />
            </Link>
            <span>{event.reason}</span>
          </div>
          <span className={plain.note}>
            {t.rich("by", {
              by: event.by.id === null ? t("host") : event.by.name,
              date: () => <DayWords at={event.at} />,
            })}
          </span>
        </li>
      ))}
    </ol>
  );
}

function EventWords({ event }: { readonly event: MemberEvent }) {
  const t = useTranslations();
  const format = useFormatter();
  const fields =
    event.type === "reviewer appointed" ? event.fields.map((field) => t(`fieldNames.${field}`)) : [];
  return t(`standing.event.${event.type}`, {
    name: event.member.name,
    fields: format.list(fields),
    role: event.type === "appointment ended" ? t(`roles.${event.role}`) : "",
  });
}
