"use client";

import { useRouter } from "next/navigation";
import { useFormatter, useTranslations } from "next-intl";
import { useEffect, useSyncExternalStore } from "react";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./objects.module.css";
import type { Pending } from "./outbox.ts";
import { nothingSent, type RefusedForm, senderOf } from "./outbox-sender.ts";

/** What of a file waits in this browser to be sent, and how that goes; nothing when all of it has arrived. */
export function OutboxNotice({ file }: { readonly file: string }) {
  const t = useTranslations("objectPages.outbox");
  const format = useFormatter();
  const router = useRouter();
  const sender = senderOf(file);
  const { waiting, sending, trouble, refused, arrived } = useSyncExternalStore(
    sender.listen,
    sender.now,
    nothingSent,
  );

  useEffect(() => {
    const { send } = senderOf(file);
    send();
    window.addEventListener("online", send);
    return () => window.removeEventListener("online", send);
  }, [file]);

  // The page is of the time before they arrived.
  useEffect(() => {
    if (arrived > 0) router.refresh();
  }, [arrived, router]);

  if (waiting === 0 && refused.length === 0) return null;
  return (
    <div className={styles.outbox}>
      {waiting > 0 && (
        <p role="status">
          {sending
            ? t("onItsWay", { about: sending.about, part: format.number(sending.part, { style: "percent" }) })
            : t(trouble === "signed out" ? "waitingSignedOut" : "waiting", { count: waiting })}
        </p>
      )}
      {waiting > 0 && !sending && (
        <button type="button" className={plain.quiet} onClick={sender.send}>
          {t("sendNow")}
        </button>
      )}
      {refused.map((each) => (
        <Refused key={each.pending.key} refused={each} onForget={() => sender.forget(each.pending.key)} />
      ))}
    </div>
  );
}

type RefusedProps = { readonly refused: RefusedForm; readonly onForget: () => void };

function Refused({ refused: { pending, errors }, onForget }: RefusedProps) {
  const t = useTranslations("objectPages.outbox");
  return (
    <div>
      <p>{t("refused", { about: pending.about })}</p>
      {errors.map((error) => (
        <FieldErrorNote key={`${error.field} ${error.rule}`} error={error} />
      ))}
      <button type="button" className={plain.quiet} onClick={() => openForm(pending)}>
        {t("openForm")}
      </button>
      <button type="button" className={plain.quiet} onClick={onForget}>
        {t("drop")}
      </button>
    </div>
  );
}

/** Sends it as a plain form: the host answers with the page of the form, what was typed in it and what is wrong. */
function openForm({ action, parts }: Pending): void {
  const form = document.createElement("form");
  form.method = "post";
  form.action = action;
  form.enctype = "multipart/form-data";
  for (const [name, value] of parts) {
    const field = document.createElement("input");
    field.name = name;
    if (typeof value === "string") field.value = value;
    else {
      field.type = "file";
      const files = new DataTransfer();
      files.items.add(value);
      field.files = files.files;
    }
    form.append(field);
  }
  form.hidden = true;
  document.body.append(form);
  form.submit();
}
