"use client";

import { useSyncExternalStore } from "react";
import plain from "../plain.module.css";

/** Prints the page; without scripts a browser's own way is all there is, and the button is not shown. */
export function PrintButton({ label }: { readonly label: string }) {
  const hasScripts = useSyncExternalStore(
    () => () => undefined,
    () => true,
    () => false,
  );
  if (!hasScripts) return null;
  return (
    <button type="button" className={plain.quiet} onClick={() => window.print()}>
      {label}
    </button>
  );
}
