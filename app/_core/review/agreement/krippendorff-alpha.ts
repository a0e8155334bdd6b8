/**
 * Krippendorff's alpha for nominal values: 1 less the ratio of the disagreement observed to that which chance would
 * bring. It bears missing ratings: a unit counts with as many as it has, and not at all with fewer than two
 * (K. Krippendorff, "Computing Krippendorff's Alpha-Reliability", 2011, section C).
 * @param units one list a unit: the values that raters gave it, null where one gave none
 * @returns null where it is not defined: no unit with two values, or all values alike
 */
export function krippendorffAlpha(units: readonly (readonly (string | null)[])[]): number | null {
  const values = new Map<string, number>();
  let disagreeing = 0;
  for (const unit of units) {
    const given = unit.filter((value) => value !== null);
    if (given.length < 2) continue;
    for (const value of given) values.set(value, (values.get(value) ?? 0) + 1);
    const unlike = given.reduce((pairs, value) => pairs + given.filter((other) => other !== value).length, 0);
    disagreeing += unlike / (given.length - 1);
  }
  const totals = [...values.values()];
  const all = totals.reduce((sum, each) => sum + each, 0);
  const expected = totals.reduce((sum, each) => sum + each * (all - each), 0);
  return expected === 0 ? null : 1 - ((all - 1) * disagreeing) / expected;
}
