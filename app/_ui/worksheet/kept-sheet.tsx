"use client";

import { useTranslations } from "next-intl";
import { useEffect, useState } from "react";
import { readAddress } from "#core/dating/read-worksheet";
import { addressOf, WORKSHEET_LIMITS, type Worksheet, worksheetQuery } from "#core/dating/worksheet";
import styles from "./worksheet.module.css";

const KEY = "countermark.worksheet";

/**
 * The worksheet last worked on in this browser. What an entry or a decoder puts on a new worksheet can be put onto that
 * one instead; which of the two is wanted, only the person knows.
 */
export function KeptSheet({ worksheet }: { readonly worksheet: Worksheet }) {
  const t = useTranslations("worksheet");
  const [kept, setKept] = useState<Worksheet | null>(null);
  useEffect(() => setKept(readKept()), []);
  const query = worksheetQuery(worksheet);
  const isArrival = worksheet.pieces.length === 1 && worksheet.title === "";
  const other = kept && kept.pieces.length > 0 && worksheetQuery(kept) !== query ? kept : null;
  useEffect(() => {
    // Looking at something else by a link does not forget what was worked on.
    if (worksheet.pieces.length > 1 || (worksheet.pieces.length === 1 && !readKept()?.pieces.length))
      keep(query);
  }, [query, worksheet]);
  if (!isArrival || !other || other.pieces.length >= WORKSHEET_LIMITS.pieces) return null;
  const joined = { ...other, pieces: [...other.pieces, ...worksheet.pieces] };
  return (
    <p className={styles.onto}>
      {t("onto", { count: other.pieces.length })} <a href={addressOf(joined)}>{t("ontoLink")}</a>
    </p>
  );
}

/** A browser may keep nothing, or refuse to. */
function readKept(): Worksheet | null {
  try {
    return readAddress(window.localStorage.getItem(KEY) ?? "").worksheet;
  } catch {
    return null;
  }
}

function keep(query: string): void {
  try {
    window.localStorage.setItem(KEY, query);
  } catch {
    // Then there is none to come back to.
  }
}
