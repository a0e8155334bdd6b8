"use client";

import { useTranslations } from "next-intl";
import { useEffect, useState } from "react";
import type { EntrySummary } from "#core/entries/entry";
import type { Region } from "#core/photographs/region";
import type { Likeness as LikenessWord } from "#core/similarity/likeness";
import { Cut } from "../cut.tsx";
import styles from "./contribute.module.css";

type Alike = { readonly entry: EntrySummary; readonly likeness: LikenessWord };
type Found = "looking" | "failed" | readonly Alike[];

/** A frame is looked up once it has rested this long. */
const REST_MS = 900;

type AlikeEntriesProps = { readonly draft: string; readonly sha256: string; readonly region: Region };

/** The entries nearest to the framed mark, so that a duplicate is seen before it is written. */
export function AlikeEntries({ draft, sha256, region }: AlikeEntriesProps) {
  const t = useTranslations("draftIsland");
  const words = useTranslations("likeness");
  const [found, setFound] = useState<Found>("looking");
  const { x, y, width, height, turn } = region;
  useEffect(() => {
    const asking = new AbortController();
    const query = new URLSearchParams({ photograph: sha256 });
    for (const [name, value] of Object.entries({ x, y, width, height, turn })) query.set(name, String(value));
    const timer = setTimeout(async () => {
      setFound("looking");
      try {
        const answer = await fetch(`/api/drafts/${draft}/alike?${query}`, { signal: asking.signal });
        const { alike } = (await answer.json()) as { alike?: readonly Alike[] };
        setFound(alike ?? "failed");
      } catch {
        if (!asking.signal.aborted) setFound("failed");
      }
    }, REST_MS);
    return () => {
      asking.abort();
      clearTimeout(timer);
    };
  }, [draft, sha256, x, y, width, height, turn]);

  if (found === "looking" || found === "failed")
    return (
      <p className={styles.alikeWords} role="status">
        {t(found === "looking" ? "alikeLooking" : "alikeFailed")}
      </p>
    );
  return (
    <div className={styles.alike}>
      <h3>{t("alikeHeading")}</h3>
      <p role="status" className={styles.alikeWords}>
        {t(found.length === 0 ? "alikeNone" : "alikeNote")}
      </p>
      <ul>
        {found.map(({ entry, likeness }) => (
          <li key={entry.slug}>
            <a href={`/entries/${entry.slug}`} target="_blank" rel="noopener">
              <span className={styles.alikeMat}>
                {entry.photograph && <Cut image={entry.photograph} alt="" shownAt={200} />}
              </span>
              <span>{entry.title}</span>
            </a>
            <span className={styles.alikeWords}>{words(likeness)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
