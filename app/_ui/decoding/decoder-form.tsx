import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { Worksheet } from "#core/dating/worksheet";
import type { DecoderInput, DecoderName } from "#core/decoding/decoders";
import type { FieldError } from "#core/field-error";
import plain from "../plain.module.css";
import { OtherErrors } from "../questions/form-field.tsx";
import { addressOfDecoder, carriedFields, fieldsOf, typedIn } from "./asked.ts";
import styles from "./decoder-form.module.css";

/** What every decoder's form is given: what was typed, and what is wrong with it. */
export type FormProps = { readonly input: DecoderInput; readonly error: FieldError | null };

type DecoderFormProps = FormProps & {
  readonly name: DecoderName;
  /** The worksheet that the evidence is for: the form carries it along. */
  readonly worksheet: Worksheet;
  readonly children: ReactNode;
};

/** A plain form whose answer has an address of its own: everything typed stands in it. */
export function DecoderForm({ name, input, error, worksheet, children }: DecoderFormProps) {
  const t = useTranslations("decoders");
  return (
    <form action={`${addressOfDecoder(name)}#answer`} className={styles.form}>
      {carriedFields(worksheet).map(([field, value]) => (
        <input key={`${field} ${value}`} type="hidden" name={field} value={value} />
      ))}
      <OtherErrors form={formState({ input, error }, fieldsOf(name))} shown={fieldsOf(name)} />
      {children}
      <button type="submit" className={plain.button}>
        {t("read")}
      </button>
    </form>
  );
}

/** The same for the fields that every form of the house shares. */
export function formState({ input, error }: FormProps, fields: readonly string[]) {
  const typed = Object.fromEntries(fields.map((field) => [field, typedIn(input, field)]));
  return { typed, errors: error === null ? [] : [error] };
}
