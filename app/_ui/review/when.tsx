import { useFormatter } from "next-intl";

/** A day and a time, in words and for machines. */
export function When({ at }: { readonly at: string }) {
  const format = useFormatter();
  return (
    <time dateTime={at}>{format.dateTime(new Date(at), { dateStyle: "medium", timeStyle: "short" })}</time>
  );
}
