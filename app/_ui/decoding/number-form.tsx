import { useTranslations } from "next-intl";
import type { DecoderName } from "#core/decoding/decoders";
import { LineField } from "../questions/form-field.tsx";
import { type FormProps, formState } from "./decoder-form.tsx";

/** A number as it stands on the object, with the words before it: they tell one series from another. */
export function NumberForm({ name, ...props }: FormProps & { readonly name: DecoderName }) {
  const t = useTranslations("decoders");
  const form = formState(props, ["number"]);
  return <LineField form={form} name="number" note={t("numberNote", { example: t(`examples.${name}`) })} />;
}
