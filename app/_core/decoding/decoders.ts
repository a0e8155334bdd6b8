import type { FieldError } from "../field-error.ts";
import type { Result } from "../result.ts";
import { decodeUsDesignPatent, decodeUsPatent, decodeUsTradeMark } from "./decode-number.ts";
import type { Decoded } from "./decoded.ts";
import { decodeDiamond } from "./diamond.ts";
import { decodeHallmark } from "./hallmark.ts";
import { decodeWording } from "./label-wording.ts";
import { decodeMaking } from "./making.ts";
import { decodeRegisteredDesign } from "./registered-design.ts";

/** The decoders by the last part of their pages' addresses. */
export const DECODERS = [
  ...(["wording", "hallmarks", "registration-diamond", "registered-designs"] as const),
  ...(["us-patents", "us-design-patents", "us-trade-marks", "materials"] as const),
];
export type DecoderName = (typeof DECODERS)[number];

export const isDecoder = (name: string): name is DecoderName => DECODERS.some((each) => each === name);

/** What was typed by the names of the form's fields; a field that can be ticked several times has several values. */
export type DecoderInput = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Decodes by name: what a page's address holds and what a check point gives. */
export function decode(name: DecoderName, input: DecoderInput): Result<Decoded, FieldError> {
  const one = (field: string): string => {
    const value = input[field];
    return typeof value === "string" ? value : (value?.[0] ?? "");
  };
  const several = (field: string): readonly string[] => {
    const value = input[field] ?? [];
    return (typeof value === "string" ? [value] : value).filter((each) => each !== "");
  };
  switch (name) {
    case "us-patents":
      return decodeUsPatent({ number: one("number") });
    case "us-design-patents":
      return decodeUsDesignPatent({ number: one("number") });
    case "us-trade-marks":
      return decodeUsTradeMark({ number: one("number") });
    case "registered-designs":
      return decodeRegisteredDesign({ number: one("number") });
    case "registration-diamond":
      return decodeDiamond({
        top: one("top"),
        right: one("right"),
        bottom: one("bottom"),
        left: one("left"),
        class: one("class"),
      });
    case "hallmarks":
      return decodeHallmark({
        office: one("office"),
        letter: one("letter"),
        style: one("style"),
        standard: one("standard"),
        others: several("others"),
      });
    case "wording":
      return decodeWording({ text: one("wording"), signs: several("signs") });
    case "materials":
      return decodeMaking({ features: several("features") });
  }
}
