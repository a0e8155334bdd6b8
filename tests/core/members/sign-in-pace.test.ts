import { describe, expect, it } from "vitest";
import { SIGN_IN_LIMITS, SIGN_IN_WINDOW_MS, signInTooOften } from "#core/members/sign-in-pace";

const NOW = Date.UTC(2026, 0, 1);
const MINUTE = 60_000;
/** As many failures, a second apart, the last of them now. */
const moments = (many: number, last = NOW) => Array.from({ length: many }, (_, i) => last - i * 1000);

describe("signing in", () => {
  it("is judged ten times for one address, this attempt among them, and not once more", () => {
    const { email } = SIGN_IN_LIMITS;
    expect(email).toBe(10);
    expect(signInTooOften(moments(email), [], NOW, "x")).toBeNull();
    expect(signInTooOften(moments(email + 1), [], NOW, "x")).toMatchObject({
      field: "email",
      rule: "sign-in-too-often",
      received: "x",
      params: { minutes: 15 },
    });
  });

  it("is judged thirty times for one client", () => {
    expect(signInTooOften([], moments(30), NOW, "x")).toBeNull();
    expect(signInTooOften([], moments(31), NOW, "x")).not.toBeNull();
  });

  it("says how long it takes until one may be tried again", () => {
    const first = NOW - 10 * MINUTE;
    const tried = [...moments(10, first + 9000), NOW];
    expect(signInTooOften(tried, [], NOW, "x")?.params).toEqual({ minutes: 5 });
    const later = first + SIGN_IN_WINDOW_MS;
    expect(signInTooOften([...tried.filter((at) => at !== NOW), later], [], later, "x")).toBeNull();
  });
});
