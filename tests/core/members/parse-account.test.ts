import { describe, expect, it } from "vitest";
import { parseEmail, parseJoining, parsePassword } from "#core/members/parse-account";

describe("a password", () => {
  it.each([
    ["x".repeat(11), false],
    ["x".repeat(12), true],
    ["x".repeat(200), true],
    ["x".repeat(201), false],
    ["all lower case and no figure", true],
    ["            ", true],
    // Signs count, not the units they are kept in.
    ["🫖".repeat(11), false],
    ["🫖".repeat(12), true],
  ])("is judged by its length alone: %s", (typed, taken) => {
    expect(parsePassword("password", typed).ok).toBe(taken);
  });

  it("is never repeated in a refusal", () => {
    const refused = parsePassword("new_password", "hunter2");
    expect(refused).toEqual({
      ok: false,
      error: {
        field: "new_password",
        rule: "password-length",
        received: "7",
        params: { shortest: 12, longest: 200 },
      },
    });
  });

  it("is the same however its signs were typed", () => {
    const [composed, apart] = ["caf\u00e9 au lait, two", "cafe\u0301 au lait, two"].map((typed) =>
      parsePassword("password", typed),
    );
    expect(composed).toEqual(apart);
  });
});

describe("an e-mail address", () => {
  it("is kept in lower case, without the spaces round it", () => {
    expect(parseEmail("  Ida.Corran+marks@Museum.Example ")).toEqual({
      ok: true,
      value: "ida.corran+marks@museum.example",
    });
  });

  it.each([
    ["", "required"],
    ["ida", "email"],
    ["ida@", "email"],
    ["@example.org", "email"],
    ["ida@-wrong.example.org", "email"],
    ["ida corran@example.org", "email"],
    ["ida@example.org, bram@example.org", "email"],
    [`${"x".repeat(65)}@example.org`, "email"],
    [`ida@${"x".repeat(63)}.${"y".repeat(63)}.${"z".repeat(63)}.${"w".repeat(63)}.example`, "email"],
  ])("is refused by its shape: %s", (typed, rule) => {
    const refused = parseEmail(typed);
    expect(refused.ok ? "" : refused.error.rule).toBe(rule);
  });
});

it("names every field of joining that is wrong", () => {
  const refused = parseJoining({ name: "x", email: "nobody", password: "short" });
  expect(refused.ok ? [] : refused.error.map(({ field, rule }) => `${field} ${rule}`)).toEqual([
    "name text-shortest",
    "email email",
    "password password-length",
  ]);
});
