import { useFormatter, useTranslations } from "next-intl";
import { pointOf } from "#core/object-files/checklist";
import type { FileChange } from "#core/object-files/difference-of-files";
import { LISTS, type ObjectFile } from "#core/object-files/object-file";
import { wordEdtf } from "../word-edtf.ts";

type Part = FileChange["part"];
type Texts = (key: never, params?: never) => string;

/** A field's path without its places in lists, as messages name it; and the place, from 1, where there is one. */
export function nameOfField(path: string): { readonly key: string; readonly place: number | null } {
  const steps = path.split(".");
  const place = steps.find((step) => /^\d+$/.test(step));
  return {
    key: steps.filter((step) => !/^\d+$/.test(step)).join("-"),
    place: place === undefined ? null : Number(place) + 1,
  };
}

/** Puts what a version changed into words: the names of fields, and what they say. */
export function useChangeWords(contents: readonly ObjectFile[]) {
  const raw = useTranslations("objectPages.history");
  const history: Texts = raw;
  const value = useValueWords(contents);
  const order = Object.keys(raw.raw("fields" as never));
  const placeOf = ({ field }: { readonly field: string }) => order.indexOf(nameOfField(field).key);
  return {
    /** In the order in which forms ask for them; what stands in a list stays together. */
    inOrder: (fields: FileChange["fields"]): FileChange["fields"] =>
      fields.toSorted(
        (a, b) =>
          (nameOfField(a.field).place ?? 0) - (nameOfField(b.field).place ?? 0) || placeOf(a) - placeOf(b),
      ),
    field: (path: string): string => {
      const { key, place } = nameOfField(path);
      const name = history(`fields.${key}` as never);
      return place === null || place === 1 ? name : history("nth" as never, { name, place } as never);
    },
    value: (part: Part, path: string, text: string): string =>
      text === "" ? "" : value(part, nameOfField(path).key, text),
  };
}

const DATES = new Set(["date", "made", "edtf", "ownDate-edtf", "alternatives"]);

/** Lists of messages that say what a field of a part says, where the file keeps a word of its own. */
const WORDS: Readonly<Record<string, string>> = {
  "file family": "objectPages.families",
  "line convention": "objectPages.measured",
  "observations observed": "objectPages.examine.observed",
  "measurements measured": "objectPages.measured",
  "measurements base": "objectPages.bases",
  "marks belongs": "objectPages.belongings",
  "events kind": "objectPages.events",
  "documents kind": "objectPages.documents",
  "conditions condition": "objectPages.conditions",
  "finding rung": "objectPages.rungs",
  "pieces kind": "worksheet.kinds",
  "pieces event": "worksheet.events",
  "pieces basis": "worksheet.bases",
  "stances explanation": "objects.explanation",
};

function useValueWords(contents: readonly ObjectFile[]) {
  const all = useTranslations();
  const t: Texts = all;
  const period = useTranslations("period");
  const format = useFormatter();
  const names = namesIn(contents);
  const named = (id: string): string => names.get(id) ?? t("objectPages.history.anotherItem" as never);
  return (part: Part, key: string, text: string): string => {
    const list = WORDS[`${part} ${key}`];
    if (list && all.has(`${list}.${text}` as never)) return t(`${list}.${text}` as never);
    if (DATES.has(key)) return wordEdtf(text, period);
    if (key === "order") return format.list(text.split(" ").map(named));
    if (key === "at") return format.dateTime(new Date(text), { dateStyle: "long", timeStyle: "short" });
    if (part === "observations" && key === "point") return pointOf(text)?.lookFor ?? text;
    if (part === "observations" && key === "option") return optionWords(text, contents) ?? text;
    if (key === "gapBefore") return t(`objectPages.history.gap.${text}` as never);
    if (part === "stances" && key === "anomaly" && text.includes(":"))
      return t(`objectPages.history.anomalies.${text.slice(0, text.indexOf(":"))}` as never);
    if (/^[0-9a-f]{64}$/.test(text)) return text.slice(0, 16);
    return UUID.test(text) ? named(text) : text;
  };
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** What a person would call each item of a file, by its id. */
function namesIn(contents: readonly ObjectFile[]): ReadonlyMap<string, string> {
  const called = (item: object): string => {
    const { title, what, says, words, shows, place, told, to, dateTyped, reason } = item as Readonly<
      Record<string, string | undefined>
    >;
    return title || what || says || words || shows || place || told || to || dateTyped || reason || "";
  };
  const items = contents.flatMap((content) =>
    LISTS.flatMap((list): readonly { id: string }[] => content[list]),
  );
  const explanations = contents.flatMap(({ anomalies }) => anomalies.flatMap((each) => each.explanations));
  return new Map(
    [...items, ...explanations].flatMap((item) => (called(item) ? [[item.id, called(item)] as const] : [])),
  );
}

function optionWords(id: string, contents: readonly ObjectFile[]): string | undefined {
  const points = contents.flatMap(({ observations }) => observations.map(({ point }) => point));
  for (const point of points) {
    const option = point === null ? null : pointOf(point)?.options.find((each) => each.id === id);
    if (option) return option.says;
  }
  return undefined;
}
