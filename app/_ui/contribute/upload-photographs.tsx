"use client";

import { useRouter } from "next/navigation";
import { useTranslations } from "next-intl";
import { type ReactNode, useEffect, useRef, useState } from "react";
import type { FieldError } from "#core/field-error";
import { FieldErrorNote } from "../field-error.tsx";
import { checkFile } from "../look-up/check-file.ts";
import { FileButton } from "../look-up/file-button.tsx";
import styles from "./contribute.module.css";
import { sendPhotograph } from "./send-photograph.ts";

type Sending = { readonly name: string; readonly part: number };

type UploadPhotographsProps = {
  readonly draft: string;
  /** The plain fields, where no scripts run. */
  readonly children: ReactNode;
};

/** Takes photographs into the draft one by one, each with its progress; a refusal says why and keeps the others. */
export function UploadPhotographs({ draft, children }: UploadPhotographsProps) {
  const t = useTranslations("draftIsland");
  const router = useRouter();
  const [ready, setReady] = useState(false);
  const [sending, setSending] = useState<Sending | null>(null);
  const [refused, setRefused] = useState<readonly FieldError[]>([]);
  const plain = useRef<HTMLDivElement>(null);
  // Files that were chosen before the scripts ran are taken too, and those of a dialog that was open then: its field
  // is no longer on the page, but still says what was chosen.
  useEffect(() => {
    const field = plain.current?.querySelector<HTMLInputElement>('input[type="file"]');
    const takeChosen = () => {
      const chosen = [...(field?.files ?? [])];
      if (chosen.length > 0) take(chosen);
    };
    field?.addEventListener("change", takeChosen);
    setReady(true);
    takeChosen();
  }, []);

  async function take(files: readonly File[]) {
    const errors: FieldError[] = [];
    for (const file of files) {
      setSending({ name: file.name, part: 0 });
      const error =
        (await checkFile(file)) ??
        (await sendPhotograph(draft, file, (part) => setSending({ name: file.name, part })));
      if (error) errors.push({ ...error, received: named(file, error.received) });
      // Those that are in are shown while the next are sent.
      else router.refresh();
    }
    setSending(null);
    setRefused(errors);
  }

  if (!ready) return <div ref={plain}>{children}</div>;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra way in; the buttons inside do the same.
    <div
      className={styles.upload}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        take([...event.dataTransfer.files]);
      }}
    >
      <FileButton words={t("add")} onFiles={take} />
      <FileButton words={t("camera")} onFiles={take} camera />
      <span className={styles.alikeWords}>{t("drop")}</span>
      <p role="status" className={styles.sending}>
        {sending &&
          (sending.part < 1
            ? t("uploading", { name: sending.name, percent: Math.round(100 * sending.part) })
            : t("reading", { name: sending.name }))}
      </p>
      {refused.map((error) => (
        <FieldErrorNote key={error.received} error={error} />
      ))}
    </div>
  );
}

const named = ({ name }: File, received: string): string =>
  received.includes(name) ? received : `${name}, ${received}`;
