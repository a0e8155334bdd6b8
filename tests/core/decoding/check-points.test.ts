import { describe, expect, it } from "vitest";
import { parseInterval } from "#core/dates/parse";
import { US_PATENTS } from "#core/decoding/decode-number";
import { decode } from "#core/decoding/decoders";
import points from "../../../scripts/decoder-checks/check-points.json" with { type: "json" };
import { checkPoints } from "../../../scripts/decoder-checks/check-points.ts";
import { checkTables } from "../../../scripts/decoder-checks/check-tables.ts";

const failed = (checks: ReturnType<typeof checkPoints>) =>
  checks.filter(({ passed }) => !passed).map(({ decoder, what }) => `${decoder} ${what}`);

describe("every decoder", () => {
  it("agrees with 48 dates from outside its table", () => {
    const checks = checkPoints();
    expect(failed(checks)).toEqual([]);
    const count = (basis: string) => checks.filter((check) => check.basis === basis).length;
    expect([count("published"), count("from-memory"), count("computed")]).toEqual([33, 13, 2]);
  });

  it("agrees with every row of its own table", () => {
    const checks = checkTables();
    expect(failed(checks)).toEqual([]);
    expect(checks.filter(({ decoder }) => decoder === "hallmarks")).toHaveLength(915);
  });

  it("gives periods that can be read", () => {
    for (const { decoder, input } of points) {
      const decoded = decode(decoder as "us-patents", input as { number: string });
      if (!decoded.ok) continue;
      for (const { edtf } of [...decoded.value.statements, ...decoded.value.alternatives])
        expect(parseInterval(edtf)).toMatchObject({ ok: true });
    }
  });
});

describe("dates of patents", () => {
  const exact = points.filter(
    ({ decoder, date, status, refused }) =>
      decoder === "us-patents" && /^\d{4}-/.test(date) && status === "verified-stored" && !refused,
  );

  it("fall on a Tuesday from 1911 on", () => {
    const from1911 = exact.filter(({ date }) => date >= "1911");
    const days = from1911.map(({ date }) => new Date(`${date}T12:00:00Z`).getUTCDay());
    expect(days.length).toBeGreaterThan(10);
    expect(new Set(days)).toEqual(new Set([2]));
  });

  it("rise with the numbers, as the table does", () => {
    const dated = exact.map(({ input, date }) => ({ number: Number(input.number), date }));
    const sorted = dated.toSorted((a, b) => a.number - b.number);
    expect(sorted.map(({ date }) => date)).toEqual(dated.map(({ date }) => date).toSorted());
    expect(US_PATENTS.rows.at(-1)?.year).toBe(2022);
  });
});
