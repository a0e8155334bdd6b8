import Link from "next/link";
import { useTranslations } from "next-intl";
import type { EntryView } from "#core/entries/entry";
import { StateSign } from "../state-sign.tsx";
import styles from "./entry.module.css";

/** How sure: the state, and what it means. */
export function EntryState({ view }: { readonly view: EntryView }) {
  const t = useTranslations("entry");
  const meaning = useTranslations("stateMeaning");
  const { state } = view.summary;
  return (
    <section aria-labelledby="sure">
      <h2 id="sure">{t("sure")}</h2>
      <p className={styles.stateWords}>
        <StateSign state={state} />
      </p>
      <p>
        {meaning(state)} <Link href="/about#verified">{t("whatStatesMean")}</Link>
      </p>
    </section>
  );
}
