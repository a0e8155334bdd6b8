import { useTranslations } from "next-intl";
import { type DraftPhotograph, MOST_DRAFT_PHOTOGRAPHS } from "#core/drafts/draft";
import { type PhotographPart, photographField } from "#core/drafts/draft-fields";
import { FieldErrorNote, LIMITS } from "../field-error.tsx";
import { ACCEPT } from "../look-up/check-file.ts";
import plain from "../plain.module.css";
import { type FormState, LineField, TextField } from "../questions/form-field.tsx";
import styles from "./contribute.module.css";
import { FramePhotograph } from "./frame-photograph.tsx";
import { UploadPhotographs } from "./upload-photographs.tsx";

/** Licences that are offered, by their SPDX identifiers (the mark of the public domain has none of its own); any other terms can be written instead. */
const LICENCES = [
  ["CC-BY-4.0", "credit"],
  ["CC-BY-SA-4.0", "alike"],
  ["CC-BY-NC-4.0", "noTrade"],
  ["CC0-1.0", "public"],
  ["CC-PDM-1.0", "free"],
] as const;

type PhotographsPartProps = {
  readonly draft: string;
  readonly form: FormState;
  readonly photographs: readonly DraftPhotograph[];
};

/** The photographs, large, each with its frame and what is said of it; and the way to add more. */
export function PhotographsPart({ draft, form, photographs }: PhotographsPartProps) {
  const t = useTranslations("contribute");
  const error = form.errors.find(({ field }) => field === "photograph");
  const room = photographs.length < MOST_DRAFT_PHOTOGRAPHS;
  return (
    <>
      {error && <FieldErrorNote error={error} id="photograph-error" />}
      {photographs.length === 0 && <p>{t("noPhotographs")}</p>}
      {photographs.length > 1 && <p className={plain.note}>{t("orderNote")}</p>}
      {photographs.map((photograph, i) => (
        <OnePhotograph
          key={photograph.sha256}
          draft={draft}
          form={form}
          photograph={photograph}
          place={i + 1}
          of={photographs.length}
        />
      ))}
      <datalist id="licences">
        {LICENCES.map(([licence, words]) => (
          <option key={licence} value={licence} label={`${licence}: ${t(`licences.${words}`)}`} />
        ))}
      </datalist>
      {room && (
        <UploadPhotographs draft={draft}>
          <div className={plain.field}>
            <label htmlFor="photograph">{t("plainUpload")}</label>
            <input
              id="photograph"
              type="file"
              name="photograph"
              accept={ACCEPT}
              multiple
              className={plain.input}
              aria-describedby={error ? "photograph-error" : undefined}
            />
          </div>
          <p>
            <button type="submit" name="act" value="save" className={plain.quiet}>
              {t("plainUploadGo")}
            </button>
          </p>
        </UploadPhotographs>
      )}
      <p className={plain.note}>{t("plainUploadNote", { ...LIMITS, most: MOST_DRAFT_PHOTOGRAPHS })}</p>
    </>
  );
}

type OneProps = {
  readonly draft: string;
  readonly form: FormState;
  readonly photograph: DraftPhotograph;
  readonly place: number;
  /** How many there are. */
  readonly of: number;
};

function OnePhotograph({ draft, form, photograph, place, of }: OneProps) {
  const t = useTranslations("contribute");
  const parts = useTranslations("photographParts");
  const name = (part: PhotographPart) => photographField(photograph.sha256, part);
  const field = (part: "shows" | "credit" | "licence" | "impression" | "pixels_per_mm") => ({
    form,
    name: name(part),
    label: capital(parts(part)),
    note: t(`notes.${part}`),
  });
  const wrong = form.errors.find((error) => error.field === name("x"));
  return (
    <fieldset className={styles.photograph} id={`photograph-${place}`}>
      <legend>{t("photograph", { place })}</legend>
      {wrong && <FieldErrorNote error={wrong} />}
      <FramePhotograph draft={draft} photograph={photograph} typed={form.typed} />
      <TextField {...field("shows")} optional rows={2} />
      <div className={styles.two}>
        <LineField {...field("credit")} />
        <LineField {...field("licence")} list="licences" />
        <LineField {...field("impression")} optional />
        <LineField {...field("pixels_per_mm")} optional />
      </div>
      <div className={styles.barButtons}>
        {place > 1 && (
          <button type="submit" name="act" value={`earlier:${photograph.sha256}`} className={plain.quiet}>
            {t("earlier")}
          </button>
        )}
        {place < of && (
          <button type="submit" name="act" value={`later:${photograph.sha256}`} className={plain.quiet}>
            {t("later")}
          </button>
        )}
        <button type="submit" name="act" value={`remove:${photograph.sha256}`} className={plain.quiet}>
          {t("remove")}
        </button>
      </div>
    </fieldset>
  );
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
