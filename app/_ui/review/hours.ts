/** Hours as a message takes them: whole days, whole hours, or minutes of what is less than an hour. */
export function lengthOf(hours: number): { readonly unit: "days" | "hours" | "minutes"; readonly n: number } {
  if (hours < 1) return { unit: "minutes", n: Math.max(1, Math.round(hours * 60)) };
  return hours % 24 === 0 ? { unit: "days", n: hours / 24 } : { unit: "hours", n: Math.round(hours) };
}
