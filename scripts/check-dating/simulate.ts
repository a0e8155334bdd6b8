import { parseInterval } from "#core/dates/parse";
import { type EventModel, modelOf } from "#core/dating/event-model";
import type { DatedEvent, Evidence, EvidenceKind } from "#core/dating/evidence";

/** An object whose year of making is known, and what is found on it and told of it. */
export type Simulated = { readonly made: number; readonly evidence: readonly Evidence[] };

type Shape = {
  readonly kind: EvidenceKind;
  readonly event: DatedEvent;
  /** How many units its period spans; null when it is open above or below. */
  readonly length: number | null;
  readonly open?: "above" | "below";
  readonly unit: "year" | "month";
  readonly about?: boolean;
  /** A date letter without its shield: the same letter comes again after so many years. */
  readonly cycle?: number;
};

const SHAPES: readonly Shape[] = [
  { kind: "mark", event: "marked", length: 12, unit: "year" },
  { kind: "mark", event: "marked", length: 25, unit: "year", about: true },
  { kind: "wording", event: "labelled", length: 20, unit: "year" },
  { kind: "wording", event: "labelled", length: null, open: "above", unit: "year" },
  { kind: "number", event: "marked", length: null, open: "above", unit: "month" },
  { kind: "hallmark", event: "marked", length: 1, unit: "year", cycle: 20 },
  { kind: "catalogue-line", event: "made", length: 8, unit: "year" },
  { kind: "material", event: "made", length: null, open: "above", unit: "year", about: true },
  { kind: "maker", event: "made", length: 40, unit: "year" },
  { kind: "story", event: "given", length: 17, unit: "month" },
  { kind: "story", event: "given", length: null, open: "below", unit: "year" },
  { kind: "story", event: "owned", length: 3, unit: "year" },
  { kind: "story", event: "sold", length: 6, unit: "month" },
  { kind: "photograph", event: "photographed", length: 4, unit: "year", about: true },
  { kind: "repair", event: "repaired", length: 5, unit: "year" },
];

/** "About" a year, as the policy has it. */
const ABOUT = 5;
/** How far an open end's other end may lie away: farther than any grid is long. */
const FAR = 1000;

/**
 * Draws an object and its evidence as the models say they come about: when each event was, what was written down of
 * it, and whether it is true of this object or of another one.
 */
export function simulate(random: () => number, from: number, to: number): Simulated {
  const anyTime = () => from + random() * (to + 1 - from);
  const made = anyTime();
  const pieces = 1 + Math.floor(random() * 6);
  const evidence = Array.from({ length: pieces }, (_, i): Evidence => {
    const shape = SHAPES[Math.floor(random() * SHAPES.length)] ?? SHAPES[0];
    if (!shape) throw new Error("There are no shapes.");
    const reliability = 0.5 + random() * 0.499;
    const of = random() < reliability ? made : anyTime();
    const [edtf = "", ...others] = statement(random, shape, of);
    return {
      id: `piece ${i + 1}`,
      kind: shape.kind,
      event: shape.event,
      interval: read(edtf),
      ...(others.length > 0 ? { alternatives: others.map(read) } : {}),
      reliability,
      reason: "drawn by the model",
      source: "simulated",
      basis: null,
      exceptions: "",
      group: null,
    };
  });
  return { made, evidence };
}

/** The periods that may be written down of an event, one of which holds it, however it is out. */
function statement(random: () => number, shape: Shape, made: number): readonly string[] {
  const model = modelOf(shape);
  const perYear = shape.unit === "year" ? 1 : 12;
  const softer = shape.about ? ABOUT : 0;
  for (;;) {
    const event = eventTime(random, model, made);
    const length = shape.length ?? 0;
    const below = shape.open === "above" ? FAR : length / perYear + 12;
    const above = shape.open === "below" ? FAR : 12;
    const start = Math.floor((event - below + random() * (below + above)) * perYear);
    const first = start / perYear - random() * (model.soft.lower + softer);
    const last = (start + length) / perYear + random() * (model.soft.upper + softer);
    if (shape.open === "above" ? event >= first : shape.open === "below" && event < last)
      return [written(start, start, shape)];
    if (shape.open !== undefined) continue;
    if (shape.cycle === undefined) {
      if (event >= first && event < last) return [written(start, start + length - 1, shape)];
      continue;
    }
    const turns = [-8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7, 8].map(
      (i) => i * (shape.cycle ?? 0),
    );
    if (turns.some((years) => event >= first + years && event < last + years))
      return turns.map((years) => written(start + years, start + years + length - 1, shape));
  }
}

function eventTime(random: () => number, { side, lags }: EventModel, made: number): number {
  let chosen = random();
  const lag = lags.find(({ share }) => {
    chosen -= share;
    return chosen < 0;
  });
  const years = lag ? -lag.mean * Math.log(1 - random()) : 0;
  return side === "after" ? made + years : side === "before" ? made - years : made;
}

function written(first: number, last: number, { unit, open, about }: Shape): string {
  const one = (n: number) => {
    const mark = about ? "~" : "";
    if (unit === "year") return `${String(n).padStart(4, "0")}${mark}`;
    return `${String(Math.floor(n / 12)).padStart(4, "0")}-${String((n % 12) + 1).padStart(2, "0")}${mark}`;
  };
  if (open === "above") return `${one(first)}/..`;
  if (open === "below") return `../${one(first - 1)}`;
  return `${one(first)}/${one(last)}`;
}

function read(edtf: string) {
  const interval = parseInterval(edtf);
  if (!interval.ok) throw new Error(`Not a period: ${edtf}`);
  return interval.value;
}
