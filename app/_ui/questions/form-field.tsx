import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { FieldError } from "#core/field-error";
import type { Typed } from "#core/questions/typed-text";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./form.module.css";

/** What every field of a form shares: what was typed, and everything that is wrong with it. */
export type FormState = { readonly typed: Typed; readonly errors: readonly FieldError[] };

type FieldProps = {
  readonly form: FormState;
  readonly name: string;
  /** The word for it, where the field's name has none of its own. */
  readonly label?: string;
  readonly note?: ReactNode;
  readonly optional?: boolean;
  readonly wide?: boolean;
  /** Sets the ids apart where a page has the same field twice. */
  readonly prefix?: string;
};

type Attributes = {
  readonly id: string;
  readonly name: string;
  readonly className: string | undefined;
  readonly "aria-invalid": true | undefined;
  readonly "aria-describedby": string | undefined;
  readonly autoFocus: boolean;
};

/** The first field that is wrong has the focus when the page opens, with scripts or without. */
export const focused = (isFirst: boolean): { readonly autoFocus: boolean } => ({ autoFocus: isFirst });

/** A label, the control, what is wrong with it and a note, tied together. */
function Field(props: FieldProps & { readonly children: (attributes: Attributes) => ReactNode }) {
  const { form, name, label, note, optional = false, wide = false, prefix = "", children } = props;
  const t = useTranslations("fields");
  const words = useTranslations("questionForm");
  const id = `${prefix}${name}`;
  const error = form.errors.find(({ field }) => field === name);
  const described = [error && `${id}-error`, note && `${id}-note`].filter((each) => each).join(" ");
  const suggestion = error?.params?.suggestion;
  return (
    <div className={`${plain.field} ${wide ? styles.wide : ""}`}>
      <label htmlFor={id}>
        {label ?? t(name as "title")}
        {optional && <span className={styles.optional}> {words("optional")}</span>}
      </label>
      {children({
        id,
        name,
        className: plain.input,
        "aria-invalid": error ? true : undefined,
        "aria-describedby": described === "" ? undefined : described,
        ...focused(error !== undefined && form.errors[0] === error),
      })}
      {error && <FieldErrorNote error={error} id={`${id}-error`} />}
      {suggestion !== undefined && <p className={plain.note}>{words("didYouMean", { suggestion })}</p>}
      {note && (
        <p className={plain.note} id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}

type LineProps = FieldProps & {
  readonly list?: string;
  readonly type?: "text" | "email" | "password";
  readonly autoComplete?: string;
};

/** A field of one line. What is typed into one for a password is never shown again. */
export function LineField({ list, type = "text", autoComplete = "off", ...props }: LineProps) {
  return (
    <Field {...props}>
      {(attributes) => (
        <input
          {...attributes}
          type={type}
          defaultValue={type === "password" ? "" : (props.form.typed[props.name] ?? "")}
          autoComplete={autoComplete}
          list={list}
        />
      )}
    </Field>
  );
}

/** A field of several lines. */
export function TextField({ rows = 5, ...props }: FieldProps & { readonly rows?: number }) {
  return (
    <Field {...props}>
      {({ className, ...attributes }) => (
        <textarea
          {...attributes}
          className={`${className} ${styles.text}`}
          rows={rows}
          defaultValue={props.form.typed[props.name] ?? ""}
        />
      )}
    </Field>
  );
}

type ChoiceProps = FieldProps & {
  /** The value and its word; an empty value stands for none. */
  readonly choices: readonly (readonly [string, string])[];
};

/** A field in which one of a few is chosen. */
export function ChoiceField({ choices, ...props }: ChoiceProps) {
  return (
    <Field {...props}>
      {(attributes) => (
        <select {...attributes} defaultValue={props.form.typed[props.name] ?? ""}>
          {choices.map(([value, word]) => (
            <option key={value} value={value}>
              {word}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

type OtherErrorsProps = { readonly form: FormState; readonly shown: readonly string[] };

/** What is wrong with the whole of what was sent, not with a field that the page shows. */
export function OtherErrors({ form, shown }: OtherErrorsProps) {
  const others = form.errors.filter(({ field }) => !shown.includes(field));
  if (others.length === 0) return null;
  return (
    <div tabIndex={-1} {...focused(others[0] === form.errors[0])} className={styles.others}>
      {others.map((error) => (
        <FieldErrorNote key={`${error.field} ${error.rule}`} error={error} />
      ))}
    </div>
  );
}
