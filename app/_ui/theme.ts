export const THEMES = ["system", "light", "dark"] as const;
export type Theme = (typeof THEMES)[number];

/** Reads the theme cookie; whatever it does not know means "as the system". */
export function themeOf(cookie: string | undefined): Theme {
  return THEMES.find((theme) => theme === cookie) ?? "system";
}
