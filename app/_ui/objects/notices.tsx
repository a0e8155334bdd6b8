import type { Notice } from "#core/object-files/derived";
import styles from "./objects.module.css";
import { useSaidWords } from "./said-words.ts";

/** What happened to entries since they were accepted here. */
export function Notices({ notices }: { readonly notices: readonly Notice[] }) {
  const say = useSaidWords();
  if (notices.length === 0) return null;
  return (
    <div className={styles.against} role="status">
      {notices.map((each) => (
        <p key={`${each.is} ${each.items.map(({ id }) => id).join(" ")}`}>{say("notice", each)}</p>
      ))}
    </div>
  );
}
