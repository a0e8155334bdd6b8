import Link from "next/link";
import { useTranslations } from "next-intl";
import type { FieldError } from "#core/field-error";
import { FieldErrorWords } from "../field-error.tsx";
import plain from "../plain.module.css";

type WhyNotProps = {
  /** What is not offered, as a clause: "You can't vote here". */
  readonly what: string;
  readonly why: FieldError;
  /** Path to come back to after signing in. */
  readonly page: string;
};

/** Says why something is not offered, where it would be. */
export function WhyNot({ what, why, page }: WhyNotProps) {
  const t = useTranslations("review");
  const key = `whyNot.${why.rule}` as "whyNot.author-only";
  return (
    <p className={plain.note}>
      {what}{" "}
      {why.rule === "sign-in-first" ? (
        t.rich("signInFirst", {
          link: (words) => <Link href={`/sign-in?next=${encodeURIComponent(page)}`}>{words}</Link>,
        })
      ) : t.has(key) ? (
        t(key, { received: why.received })
      ) : (
        <FieldErrorWords error={why} />
      )}
    </p>
  );
}
