const BROWSERS = [
  ["Edge", /\bEdg(?:e|A|iOS)?\//],
  ["Opera", /\bOPR\//],
  ["Firefox", /\b(?:Firefox|FxiOS)\//],
  ["Chrome", /\b(?:Chrome|CriOS|HeadlessChrome)\//],
  ["Safari", /\bSafari\//],
] as const;
const SYSTEMS = [
  ["Android", /\bAndroid\b/],
  ["iPhone", /\biPhone\b/],
  ["iPad", /\biPad\b/],
  ["Windows", /\bWindows\b/],
  ["macOS", /\bMac OS X\b/],
  ["Linux", /\bLinux\b/],
] as const;

/** What a browser calls itself, as far as it helps to tell one's own apart; null for what is not told. */
export function browserName(userAgent: string): {
  readonly browser: string | null;
  readonly system: string | null;
} {
  const named = (names: readonly (readonly [string, RegExp])[]) =>
    names.find(([, sign]) => sign.test(userAgent))?.[0] ?? null;
  return { browser: named(BROWSERS), system: named(SYSTEMS) };
}
