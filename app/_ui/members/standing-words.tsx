import { useFormatter, useTranslations } from "next-intl";
import type { Field } from "#core/entries/vocabulary";
import { rolesOf, type Standing } from "#core/members/account";

/** What a member is, in words; who is nothing else is a contributor. */
export function RolesWords({ of }: { readonly of: Standing }) {
  const t = useTranslations("roles");
  const format = useFormatter();
  const roles = rolesOf(of);
  const shown = roles.length > 1 ? roles.filter((role) => role !== "contributor") : roles;
  return format.list(shown.map((role) => t(role)));
}

/** Names of fields, one after the other. */
export function FieldsWords({ fields }: { readonly fields: readonly Field[] }) {
  const t = useTranslations("fieldNames");
  const format = useFormatter();
  return format.list(
    fields.map((field) => t(field)),
    { type: "unit" },
  );
}

/** A day in words. */
export function DayWords({ at }: { readonly at: string }) {
  return <time dateTime={at}>{useFormatter().dateTime(new Date(at), { dateStyle: "long" })}</time>;
}
