import { describe, expect, it } from "vitest";
import { readEnvironment } from "#web/environment";

const env = (variables: Record<string, string>) => readEnvironment({ NODE_ENV: "test", ...variables });

describe("the settings of a host", () => {
  it("have defaults that need nothing", () => {
    expect(env({})).toMatchObject({
      databaseUrl: null,
      lookUpDays: 30,
      oldVectorsDays: 7,
      demoFolder: null,
      origin: null,
    });
    expect(env({ DATABASE_URL: "" }).databaseUrl).toBeNull();
  });

  it("name the variable, the rule and the value", () => {
    expect(() => env({ COUNTERMARK_LOOKUP_DAYS: "soon" })).toThrow(
      /COUNTERMARK_LOOKUP_DAYS: .*Received "soon"/,
    );
    expect(() => env({ COUNTERMARK_DEMO: "yes" })).toThrow(/COUNTERMARK_DEMO/);
  });

  it("keep a review open for three days, for a minute in the demo, or as long as they say", () => {
    const hours = (variables: Record<string, string>) => env(variables).policy.hours;
    expect(hours({})).toBe(72);
    expect(hours({ COUNTERMARK_DEMO: "1" })).toBe(0.02);
    expect(hours({ COUNTERMARK_DEMO: "1", COUNTERMARK_REVIEW_HOURS: "24" })).toBe(24);
    expect(() => hours({ COUNTERMARK_REVIEW_HOURS: "0" })).toThrow(
      /COUNTERMARK_REVIEW_HOURS: .*Received "0"/,
    );
  });

  it("never repeat an address that may carry a password", () => {
    const secret = "mysql://me:secret@db/x";
    expect(() => env({ DATABASE_URL: secret })).toThrow(/DATABASE_URL: must begin with postgres/);
    expect(() => env({ DATABASE_URL: secret })).not.toThrow(/secret/);
  });
});
