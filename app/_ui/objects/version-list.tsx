import Link from "next/link";
import { useTranslations } from "next-intl";
import type { FileVersion } from "#core/object-files/kept-file";
import plain from "../plain.module.css";
import { When } from "../review/when.tsx";
import styles from "./objects.module.css";
import { RestoreVersion } from "./restore-version.tsx";

type VersionListProps = {
  readonly file: string;
  readonly versions: readonly FileVersion[];
  /** Number of the one whose changes are shown. */
  readonly shown: number;
  readonly mayChange: boolean;
};

/** Every version of a file, the newest first, with what changed it. */
export function VersionList({ file, versions, shown, mayChange }: VersionListProps) {
  const t = useTranslations("objectPages");
  const [newest] = versions;
  return (
    <ol className={styles.list}>
      {versions.map(({ number, command, at, by, hash }) => (
        <li key={number} id={`version-${number}`}>
          <p>
            <Link
              href={`/objects/${file}/history?version=${number}`}
              aria-current={number === shown ? "true" : undefined}
            >
              {t("history.version", { number })}
            </Link>
            {": "}
            {t.has(`commands.${command.is}` as "commands.open")
              ? t(`commands.${command.is}` as "commands.restore", { number: command.number ?? number })
              : command.is}
          </p>
          <p className={plain.note}>
            {t.rich("history.by", { name: by.name, when: () => <When at={at.toISOString()} /> })}{" "}
            <span title={hash}>{t("history.hash", { hash: hash.slice(0, 12) })}</span>
          </p>
          {mayChange && newest && hash !== newest.hash && (
            <RestoreVersion file={file} number={number} newest={newest.number} />
          )}
        </li>
      ))}
    </ol>
  );
}
