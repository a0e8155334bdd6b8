"use client";

import { useTranslations } from "next-intl";
import { useState, useSyncExternalStore } from "react";
import plain from "../plain.module.css";

/** The address of an answer, whole, as it can be sent to somebody; without scripts, its path. */
export function AnswerAddress({ path }: { readonly path: string }) {
  const t = useTranslations("address");
  const origin = useSyncExternalStore(
    never,
    () => window.location.origin,
    () => "",
  );
  // Browsers give pages the clipboard only over a safe connection.
  const canCopy = useSyncExternalStore(
    never,
    () => Boolean(navigator.clipboard),
    () => false,
  );
  const [copied, setCopied] = useState(false);
  const address = origin + path;
  return (
    <>
      <a href={path}>{address}</a>{" "}
      {canCopy && (
        <button
          type="button"
          className={plain.link}
          onClick={() => navigator.clipboard.writeText(address).then(() => setCopied(true))}
        >
          {t("copy")}
        </button>
      )}{" "}
      <span role="status">{copied && t("copied")}</span>
    </>
  );
}

/** Where a page stands does not change while it is read. */
const never = () => () => undefined;
