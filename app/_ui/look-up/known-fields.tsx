"use client";

import { useTranslations } from "next-intl";
import { type ReactNode, useId, useRef } from "react";
import { KINDS, TECHNIQUES } from "#core/entries/vocabulary";
import type { FieldError } from "#core/field-error";
import type { KnowledgeField, TypedKnowledge } from "#core/look-ups/knowledge";
import { FieldErrorNote } from "../field-error.tsx";
import plain from "../plain.module.css";
import styles from "./known.module.css";
import { ProposeLetters } from "./propose-letters.tsx";

export type KnownFieldsProps = {
  readonly typed: TypedKnowledge;
  readonly materials: readonly string[];
  readonly error: FieldError | null;
  /** The id of the form that the fields belong to, when they stand outside it. */
  readonly form?: string;
  /** The photograph and region as a look-up would send them, where there is one whose letters could be read. */
  readonly photograph?: (() => FormData | null) | undefined;
};

/** What may be known besides the photograph: plain fields, each of which may stay empty. */
export function KnownFields({ typed, materials, error, form, photograph }: KnownFieldsProps) {
  const t = useTranslations("known");
  const words = useTranslations();
  const list = useId();
  const letters = useRef<HTMLInputElement>(null);
  const shared = (name: KnowledgeField) => ({ name, defaultValue: typed[name], form });
  return (
    <div className={styles.fields}>
      <Field name="letters" error={error} note={t("lettersNote")} className={styles.wide}>
        {(attributes) => (
          <input
            ref={letters}
            {...attributes}
            {...shared("letters")}
            className={`${plain.input} ${styles.letters}`}
            maxLength={300}
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
          />
        )}
      </Field>
      {photograph && (
        <div className={styles.wide}>
          <ProposeLetters
            photograph={photograph}
            onTake={(proposed) => {
              if (!letters.current) return;
              letters.current.value = proposed;
              letters.current.focus();
            }}
          />
        </div>
      )}
      <Field name="width_mm" error={error}>
        {(attributes) => (
          <input
            {...attributes}
            {...shared("width_mm")}
            className={plain.input}
            inputMode="decimal"
            autoComplete="off"
          />
        )}
      </Field>
      <Field name="height_mm" error={error}>
        {(attributes) => (
          <input
            {...attributes}
            {...shared("height_mm")}
            className={plain.input}
            inputMode="decimal"
            autoComplete="off"
          />
        )}
      </Field>
      <Field name="technique" error={error}>
        {(attributes) => (
          <select {...attributes} {...shared("technique")} className={plain.input}>
            <option value="">{t("unknown")}</option>
            {TECHNIQUES.map((each) => (
              <option key={each} value={each}>
                {words(`techniques.${each}`)}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field name="kind" error={error}>
        {(attributes) => (
          <select {...attributes} {...shared("kind")} className={plain.input}>
            <option value="">{t("unknown")}</option>
            {KINDS.map((each) => (
              <option key={each} value={each}>
                {words(`kinds.${each}`)}
              </option>
            ))}
          </select>
        )}
      </Field>
      <Field name="material" error={error} className={styles.wide}>
        {(attributes) => (
          <>
            <input
              {...attributes}
              {...shared("material")}
              className={plain.input}
              list={list}
              maxLength={100}
              autoComplete="off"
            />
            <datalist id={list}>
              {materials.map((material) => (
                <option key={material} value={material} />
              ))}
            </datalist>
          </>
        )}
      </Field>
    </div>
  );
}

type FieldProps = {
  readonly name: KnowledgeField;
  readonly error: FieldError | null;
  readonly note?: string;
  readonly className?: string | undefined;
  readonly children: (attributes: {
    readonly id: string;
    readonly "aria-invalid": true | undefined;
    readonly "aria-describedby": string | undefined;
  }) => ReactNode;
};

/** A field with its label, its note and the error that is about it, tied together. */
function Field({ name, error, note, className = "", children }: FieldProps) {
  const t = useTranslations("fields");
  const id = useId();
  const broken = error?.field === name ? error : null;
  const described = [broken && `${id}-error`, note && `${id}-note`].filter((each) => each).join(" ");
  return (
    <div className={`${plain.field} ${className}`}>
      <label htmlFor={id}>{t(name)}</label>
      {children({
        id,
        "aria-invalid": broken ? true : undefined,
        "aria-describedby": described === "" ? undefined : described,
      })}
      {broken && <FieldErrorNote error={broken} id={`${id}-error`} />}
      {note && (
        <p className={plain.note} id={`${id}-note`}>
          {note}
        </p>
      )}
    </div>
  );
}
