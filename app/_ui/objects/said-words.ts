import { useTranslations } from "next-intl";
import { type Said, withDatesWorded } from "#core/object-files/derived";
import { wordEdtf } from "../word-edtf.ts";

type Group = "anomaly" | "argument" | "provenance" | "notice" | "caution";
export type SaidWords = (group: Group, said: Said) => string;

/** Puts derived sentences into words: messages `objects.<group>.<is>` with their params, dates said as dates. */
export function useSaidWords(): SaidWords {
  const t: (key: never, params: never) => string = useTranslations("objects");
  const period = useTranslations("period");
  return (group, { is, params }) => {
    const worded = withDatesWorded(params, (edtf) => wordEdtf(edtf, period));
    return t(`${group}.${is}` as never, worded as never);
  };
}
