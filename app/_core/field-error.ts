/**
 * One thing wrong with one field of what somebody gave us.
 * `rule` and `params` are turned into words by the interface's message files; `received` is shown as it came.
 */
export type FieldError = {
  readonly field: string;
  readonly rule: string;
  readonly received: string;
  readonly params?: Readonly<Record<string, string | number>>;
};

/** Shortens a received value so that an error message stays readable. */
export function received(value: unknown): string {
  const text = typeof value === "string" ? value : (JSON.stringify(value) ?? String(value));
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
