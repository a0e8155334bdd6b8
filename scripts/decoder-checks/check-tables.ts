import { readFileSync } from "node:fs";
import { US_DESIGN_PATENTS, US_PATENTS, US_TRADE_MARKS } from "#core/decoding/decode-number";
import type { Decoded } from "#core/decoding/decoded";
import { type DecoderName, decode } from "#core/decoding/decoders";
import { WORDING_RULES } from "#core/decoding/label-wording";
import { FEATURES } from "#core/decoding/making";
import type { YearRow } from "#core/decoding/number-table";
import { UK_DESIGNS } from "#core/decoding/registered-design";
import type { Check } from "./check-points.ts";

/** Compares what the decoders answer with every row of their tables. */
export function checkTables(): readonly Check[] {
  return [
    ...checkYears("us-patents", US_PATENTS.rows),
    ...checkYears("us-design-patents", US_DESIGN_PATENTS.rows),
    ...checkYears("us-trade-marks", US_TRADE_MARKS.rows),
    ...checkYears("registered-designs", UK_DESIGNS),
    ...checkLetters(),
    ...checkWording(),
    ...checkFeatures(),
  ];
}

const found = (decoder: DecoderName, input: Parameters<typeof decode>[1]): Decoded => {
  const decoded = decode(decoder, input);
  return decoded.ok ? decoded.value : { statements: [], alternatives: [], notes: [] };
};

/** The number in the middle of a year's numbers is of that year, whatever printed tables differ by. */
function checkYears(decoder: DecoderName, rows: readonly YearRow[]): readonly Check[] {
  return rows.map((row, i) => {
    const next = rows[i + 1]?.first ?? row.first + (row.first - (rows[i - 1]?.first ?? 0));
    const middle = Math.floor((row.first + next) / 2);
    const number = decoder === "registered-designs" ? `Rd ${middle}` : String(middle);
    const { statements } = found(decoder, { number });
    const passed = statements[0]?.edtf === `${row.from ?? row.year}/..`;
    return { decoder, basis: row.basis, against: "table", passed, what: `${number}: ${row.year}` };
  });
}

/** The list of letters was expanded from the cycles by another program than ours. */
function checkLetters(): readonly Check[] {
  const text = readFileSync(new URL("./date-letters.csv", import.meta.url), "utf8");
  return text
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => {
      const [office = "", letter = "", style = "", from = "", to = "", status] = line.split(",");
      const { statements, alternatives } = found("hallmarks", { office, letter, style });
      const all = [...statements, ...alternatives].map(({ edtf }) => edtf);
      return {
        decoder: "hallmarks",
        basis: status === "verified-stored" ? "published" : "from-memory",
        against: "table",
        passed: all.includes(`${from}/${to}`),
        what: `${office} ${letter} (${style}): ${from} to ${to}`,
      };
    });
}

function checkWording(): readonly Check[] {
  return WORDING_RULES.flatMap((rule) =>
    rule.examples.map((example) => {
      const { statements, notes } = found("wording", { wording: example });
      const passed =
        rule.strength === "context"
          ? notes.some(({ params }) => params?.text === rule.reason)
          : statements.some((statement) => "rule" in statement && statement.rule === rule.id);
      return {
        decoder: "wording",
        basis: rule.basis,
        against: "table",
        passed,
        what: `${rule.id}: ${example}`,
      };
    }),
  );
}

function checkFeatures(): readonly Check[] {
  return FEATURES.map(({ id, basis, edtf }) => ({
    decoder: "materials",
    basis,
    against: "table",
    passed: found("materials", { features: [id] }).statements[0]?.edtf === edtf,
    what: id,
  }));
}
