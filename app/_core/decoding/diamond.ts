import type { DatedStatement } from "../dating/evidence.ts";
import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Decoded, Note } from "./decoded.ts";
import {
  type DiamondPart,
  type DiamondSeries,
  type Irregularity,
  irregularitiesOf,
  keysOf,
  lookUpDiamond,
} from "./diamond-table.ts";
import { exceptionsOf, fillReason, sayDay } from "./fill-reason.ts";
import { type DiamondInput, type DiamondReading, readDiamond } from "./read-diamond.ts";
import { RELIABILITY } from "./reliability-policy.ts";
import { type Sourced, weakestBasis } from "./sourced.ts";

/** A day of registration, as far as it was read, with the rows that give it. */
type Registered = { readonly iso: string; readonly rows: readonly Sourced[]; readonly irregular: string };

/** The British registration diamond, 1842 to 1883. */
export function decodeDiamond(input: DiamondInput): Result<Decoded, FieldError> {
  const read = readDiamond(input);
  if (!read.ok) return read;
  const { series, parts } = read.value;
  const corner = (part: DiamondPart) => cornerOf(part, series);
  if (parts.year === "") return fail({ field: corner("year"), rule: "diamond-year", received: "" });
  const irregular = irregularitiesOf(series).flatMap((each) => matchIrregular(each, parts));
  const regular = readRegular(read.value);
  if (!regular.ok && irregular.length === 0) return regular;
  const dates = [...(regular.ok ? [regular.value] : []), ...irregular];
  const statements = dates.map(stateRegistered);
  const notes: readonly Note[] = [
    { is: "diamond-series", params: { series: series.replace("-", "\u2013") } },
    ...noteClass(read.value),
    ...(parts.parcel === "" ? [] : [{ is: "diamond-parcel" as const, params: { parcel: parts.parcel } }]),
    ...dates.flatMap((date): readonly Note[] =>
      date.irregular === "" ? [] : [{ is: "irregular", params: { text: date.irregular } }],
    ),
  ];
  return ok(
    statements.length === 1
      ? { statements, alternatives: [], notes }
      : { statements: [], alternatives: statements, notes },
  );
}

/** The corner that holds a part in a series: what is wrong with the part is wrong there. */
function cornerOf(part: DiamondPart, series: DiamondSeries): string {
  const corners = ["top", "right", "bottom", "left"] as const;
  return corners.find((each) => lookUpDiamond("position", each, series)?.value === part) ?? "diamond";
}

function readRegular({ series, parts }: DiamondReading): Result<Registered, FieldError> {
  const letters = (kind: "year letter" | "month letter") => keysOf(kind, series).toSorted().join(" ");
  const refuse = (part: DiamondPart, rule: string, params: FieldError["params"]) =>
    fail({ field: cornerOf(part, series), rule, received: parts[part], params: { ...params, series } });
  const year = lookUpDiamond("year letter", parts.year, series);
  if (!year) return refuse("year", "diamond-year-letter", { letters: letters("year letter") });
  if (parts.month === "") {
    if (parts.day !== "" && !isDay(Number(parts.day), 31)) return refuse("day", "diamond-day", { days: 31 });
    return ok({ iso: String(year.value), rows: [year.row], irregular: "" });
  }
  const month = lookUpDiamond("month letter", parts.month, series);
  if (!month) return refuse("month", "diamond-month-letter", { letters: letters("month letter") });
  const toMonth = `${year.value}-${two(Number(month.value))}`;
  const rows = [year.row, month.row];
  if (parts.day === "") return ok({ iso: toMonth, rows, irregular: "" });
  const days = daysIn(Number(year.value), Number(month.value));
  if (!isDay(Number(parts.day), days)) return refuse("day", "diamond-day", { days });
  return ok({ iso: `${toMonth}-${two(Number(parts.day))}`, rows, irregular: "" });
}

/** The same letters read by an irregularity, when its year, month and day allow it. */
function matchIrregular(
  rule: Irregularity,
  parts: Readonly<Record<DiamondPart, string>>,
): readonly Registered[] {
  if (parts.year !== rule.yearLetter || parts.month !== rule.monthLetter) return [];
  const day = Number(parts.day);
  if (parts.day !== "" && (day < rule.fromDay || day > rule.toDay)) return [];
  const month = `${rule.year}-${two(rule.month)}`;
  const iso = parts.day === "" ? month : `${month}-${two(day)}`;
  return [{ iso, rows: [rule.row], irregular: rule.row.note ?? "" }];
}

function stateRegistered({ iso, rows, irregular }: Registered): DatedStatement {
  const basis = weakestBasis(rows);
  const whole = /^\d{4}-\d{2}-\d{2}$/.test(iso);
  const shape = irregular === "" ? (whole ? "reason" : "last") : whole ? "either" : "span";
  return {
    kind: "number",
    event: "marked",
    edtf: `${iso}/..`,
    reliability: irregular === "" ? RELIABILITY[basis].hard : RELIABILITY[basis].soft,
    reason: fillReason("registration-diamond", shape, { when: sayDay(iso), irregular }),
    source: [...new Set(rows.map(({ source }) => source))].join("; "),
    basis,
    exceptions: exceptionsOf("registration-diamond"),
  };
}

function noteClass({ series, class: key }: DiamondReading): readonly Note[] {
  const goods = key === "" ? undefined : lookUpDiamond("class", key, series);
  return goods ? [{ is: "diamond-class", params: { key, goods: String(goods.value) } }] : [];
}

const two = (number: number): string => String(number).padStart(2, "0");
const isDay = (day: number, days: number): boolean => day >= 1 && day <= days;
const daysIn = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate();
