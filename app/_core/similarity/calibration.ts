import { type FieldError, received } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";

/**
 * Log-odds, natural, of a conditional logit: an entry's against those of "none of them". Coefficients are fitted by
 * ml/train/calibrate.py; the formula stands in chances.ts.
 */
export type Curve = {
  /**
   * Of the cosine x of the entry's best photograph, counted from `middle`: slope * x + bend * x^2, level where that
   * would turn back, so that a nearer photograph never speaks against an entry.
   */
  readonly similarity: { readonly slope: number; readonly bend: number; readonly middle: number };
  /** The logarithm of how many photographs the entry has: more of them come nearer by chance. */
  readonly photographs: number;
  /** A unit of log-odds that a re-ranking network gives the pair; 0 when the curve was fitted without one. */
  readonly pairScore: number;
  /** Stands for the pair score of an entry that was not re-ranked beside others that were. */
  readonly unpaired: number;
  readonly none: {
    readonly constant: number;
    /** The logarithm of how many entries were searched. */
    readonly entries: number;
  };
};

/** One of the bins of equal width from 0 to 1. */
export type ReliabilityBin = {
  /** Answers whose probability fell into it. */
  readonly count: number;
  /** Means over these; null when there are none. */
  readonly probability: number | null;
  readonly right: number | null;
};

/** What probabilities came to on photographs that nothing was fitted on. */
export type Measured = {
  readonly on: string;
  /** Photographs of marks that a reference shows, and of marks that none shows. */
  readonly present: number;
  readonly absent: number;
  readonly photographs: number;
  /** Expected calibration error of the first place: by the likeness thresholds alone, and by the curve. */
  readonly eceBefore: number;
  readonly ece: number;
  /** That of the probability that none fits. */
  readonly eceNone: number;
};

/** How one model's similarities become probabilities; kept in `calibration.json` beside the network. */
export type Calibration = {
  /** name@version of the model it belongs to; it says nothing about another. */
  readonly model: string;
  /** YYYY-MM-DD */
  readonly date: string;
  readonly fittedOn: {
    readonly what: string;
    readonly queries: number;
    /** Fewest and most photographs searched. */
    readonly fewest: number;
    readonly most: number;
  };
  readonly plain: Curve;
  /** For answers whose best entries were re-ranked; null when it was fitted without. */
  readonly reranked: Curve | null;
  readonly measured: readonly Measured[];
  /** Of the first of `measured`, the first place's probability, in bins of equal width from 0 to 1. */
  readonly reliability: readonly ReliabilityBin[];
};

/** Bins of a reliability table. */
const BINS = 15;

/**
 * Reads what calibration.json holds.
 * @returns the first field that breaks a rule, with its path (`plain.none.entries`), the rule and what was received
 */
export function parseCalibration(json: unknown): Result<Calibration, FieldError> {
  try {
    return ok(readCalibration(new Fields(json, "")));
  } catch (error) {
    if (error instanceof Refused) return fail(error.what);
    throw error;
  }
}

function readCalibration(top: Fields): Calibration {
  const fittedOn = top.inside("fittedOn");
  return {
    model: top.text("model", /^[a-z][a-z0-9-]*@\d+\.\d+\.\d+$/, "name@version"),
    date: top.text("date", /^\d{4}-\d{2}-\d{2}$/, "a day as YYYY-MM-DD"),
    fittedOn: {
      what: fittedOn.text("what", /\S/, "a text"),
      queries: fittedOn.number("queries", 1),
      fewest: fittedOn.number("fewest", 1),
      most: fittedOn.number("most", 1),
    },
    plain: readCurve(top.inside("plain")),
    reranked: top.get("reranked") === null ? null : readCurve(top.inside("reranked")),
    measured: top.list("measured", 1).map(readMeasured),
    reliability: top.list("reliability", BINS, BINS).map(readBin),
  };
}

function readCurve(curve: Fields): Curve {
  const [similarity, none] = [curve.inside("similarity"), curve.inside("none")];
  return {
    similarity: {
      slope: similarity.number("slope", 0),
      bend: similarity.number("bend"),
      middle: similarity.number("middle", -1, 1),
    },
    photographs: curve.number("photographs"),
    pairScore: curve.number("pairScore", 0),
    unpaired: curve.number("unpaired"),
    none: {
      constant: none.number("constant"),
      entries: none.number("entries"),
    },
  };
}

function readMeasured(row: Fields): Measured {
  return {
    on: row.text("on", /\S/, "a text"),
    present: row.number("present", 0),
    absent: row.number("absent", 0),
    photographs: row.number("photographs", 1),
    eceBefore: row.number("eceBefore", 0, 1),
    ece: row.number("ece", 0, 1),
    eceNone: row.number("eceNone", 0, 1),
  };
}

function readBin(bin: Fields): ReliabilityBin {
  const share = (key: string) => (bin.get(key) === null ? null : bin.number(key, 0, 1));
  return { count: bin.number("count", 0), probability: share("probability"), right: share("right") };
}

class Refused extends Error {
  constructor(readonly what: FieldError) {
    super(`${what.field} must be ${what.rule}. Received ${what.received}.`);
  }
}

/** The fields of one object of the file, each read by a rule. */
class Fields {
  constructor(
    private readonly json: unknown,
    private readonly path: string,
  ) {
    if (typeof json !== "object" || json === null || Array.isArray(json))
      throw new Refused({ field: path || "calibration", rule: "an object", received: received(json) });
  }

  get(key: string): unknown {
    return Object.entries(this.json as object).find(([name]) => name === key)?.[1];
  }

  inside(key: string): Fields {
    return new Fields(this.get(key), this.nameOf(key));
  }

  text(key: string, pattern: RegExp, rule: string): string {
    const found = this.get(key);
    return typeof found === "string" && pattern.test(found) ? found : this.refuse(key, rule);
  }

  number(key: string, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY): number {
    const found = this.get(key);
    if (typeof found === "number" && Number.isFinite(found) && found >= least && found <= most) return found;
    const bounds = [
      Number.isFinite(least) ? ` from ${least}` : "",
      Number.isFinite(most) ? ` to ${most}` : "",
    ];
    return this.refuse(key, `a number${bounds.join("")}`);
  }

  list(key: string, least: number, most = Number.POSITIVE_INFINITY): readonly Fields[] {
    const found = this.get(key);
    if (!Array.isArray(found) || found.length < least || found.length > most)
      return this.refuse(key, most === least ? `a list of ${least}` : `a list of at least ${least}`);
    return found.map((each: unknown, i) => new Fields(each, `${this.nameOf(key)}[${i}]`));
  }

  private nameOf(key: string): string {
    return this.path === "" ? key : `${this.path}.${key}`;
  }

  private refuse(key: string, rule: string): never {
    throw new Refused({ field: this.nameOf(key), rule, received: received(this.get(key)) });
  }
}
