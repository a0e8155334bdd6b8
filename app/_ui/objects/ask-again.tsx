"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";
import plain from "../plain.module.css";

const EVERY_MS = 2500;

/** Says what is still being done, and asks for the page again until it is; without scripts whoever reads it does. */
export function AskAgain({ words }: { readonly words: string }) {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), EVERY_MS);
    return () => clearInterval(timer);
  }, [router]);
  return (
    <p role="status" className={plain.note}>
      {words}
    </p>
  );
}
