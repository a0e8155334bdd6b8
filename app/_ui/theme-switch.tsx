"use client";

import { useTranslations } from "next-intl";
import { useState } from "react";
import { THEMES, type Theme } from "./theme.ts";
import styles from "./theme-switch.module.css";

const YEAR = 365 * 24 * 60 * 60;

/** Light, dark, or as the system says; remembered in a cookie, so that the server draws the right one at once. */
export function ThemeSwitch({ initial }: { readonly initial: Theme }) {
  const t = useTranslations("theme");
  const [theme, setTheme] = useState(initial);

  function choose(next: Theme) {
    setTheme(next);
    if (next === "system") delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = next;
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is not in every browser yet.
    document.cookie = `theme=${next};path=/;max-age=${YEAR};samesite=lax`;
  }

  return (
    <fieldset className={styles.switch}>
      <legend>{t("legend")}</legend>
      {THEMES.map((each) => (
        <label key={each}>
          <input
            type="radio"
            name="theme"
            value={each}
            checked={theme === each}
            onChange={() => choose(each)}
          />
          <span>{t(each)}</span>
        </label>
      ))}
    </fieldset>
  );
}
