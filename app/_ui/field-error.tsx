import { useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import styles from "./field-error.module.css";

/** What the rules are when an error does not say; the same figures as the server's. */
export const LIMITS = { limitMb: 20, limitMp: 60, smallest: 8 } as const;

/** The one place that turns an error into words: the field, the rule, and what was received. */
export function FieldErrorWords({ error }: { readonly error: FieldError }) {
  const t = useTranslations();
  const field = wordField(error, t);
  const values = {
    ...LIMITS,
    accepted: t("rules.acceptedTypes"),
    width: "?",
    height: "?",
    from: "?",
    to: "?",
    allowed: "?",
    done: "?",
    of: "?",
    longest: "?",
    shortest: "?",
    length: "?",
    most: "?",
    minutes: 1,
    photographs: "?",
    event: error.received,
    ...error.params,
    field,
    received: error.received,
  };
  // An entry made from a form is judged by the rules of the import; only the server has their words.
  const wordings = [`rules.${error.rule}`, `importRules.${error.rule}`, "rules.unknown"] as const;
  const rule = wordings.find((each) => t.has(each as "rules.edtf")) as "rules.edtf";
  const words = t(rule, { ...values, rule: error.rule });
  const isHeic = error.rule === "image-type" && /\bhei[cf]/i.test(error.received);
  return isHeic ? `${words} ${t("rules.heicWayOut")}` : words;
}

/** A field by the word for it; those of a citation or a photograph by which one and what of it. */
function wordField(
  { field: name, params }: FieldError,
  t: ReturnType<typeof useTranslations<never>>,
): string {
  if (t.has(`fields.${name}` as "fields.photograph")) return t(`fields.${name}` as "fields.photograph");
  const [, of, which = "", part = ""] = /^(citation|photograph)-([^-]+)-(.+)$/.exec(name) ?? [];
  if (of === "citation" && t.has(`citationParts.${part}` as "citationParts.title"))
    return t("fields.citationPart", {
      place: which,
      part: t(`citationParts.${part}` as "citationParts.title"),
    });
  if (of === "photograph" && t.has(`photographParts.${part}` as "photographParts.shows"))
    return t("fields.photographPart", {
      photograph: params?.place ?? which.slice(0, 6),
      part: t(`photographParts.${part}` as "photographParts.shows"),
    });
  return name;
}

/** An error shown at its field or at the head of a form; `id` ties it to the field it is about. */
export function FieldErrorNote({ error, id }: { readonly error: FieldError; readonly id?: string }) {
  return (
    <p className={styles.error} id={id} role="alert">
      <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" focusable="false">
        <path
          d="M9 1.500 17 16H1z"
          fill="none"
          stroke="currentColor"
          strokeWidth="1.500"
          strokeLinejoin="round"
        />
        <path d="M9 6.500v5M9 12.800v1.500" stroke="currentColor" strokeWidth="1.700" />
      </svg>
      <span>
        <FieldErrorWords error={error} />
      </span>
    </p>
  );
}
