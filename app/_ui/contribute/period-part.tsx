import { useTranslations } from "next-intl";
import { parseInterval } from "#core/dates/parse";
import { suggestPeriod } from "#core/dates/suggest";
import { PeriodWords } from "../period-words.tsx";
import { type FormState, LineField, TextField } from "../questions/form-field.tsx";
import { axisOver } from "../time/axis.ts";
import { Ticks } from "../time/ticks.tsx";
import { Track } from "../time/track.tsx";
import styles from "./contribute.module.css";

/** The period as it was typed and as it was understood, in words and on the years, with the reason for each end. */
export function PeriodPart({ form }: { readonly form: FormState }) {
  const t = useTranslations("contribute");
  const typed = (form.typed.period ?? "").trim();
  const direct = parseInterval(typed);
  const meant = parseInterval(suggestPeriod(typed) ?? "");
  const period = direct.ok ? direct.value : meant.ok ? meant.value : null;
  const axis = axisOver([period], 6);
  return (
    <>
      <LineField form={form} name="period" optional note={t("notes.period")} />
      {typed !== "" && (
        <div className={styles.understood}>
          {period ? (
            <p>{t.rich("understood", { words: () => <PeriodWords period={period} />, edtf: period.edtf })}</p>
          ) : (
            <p>{t("notUnderstood")}</p>
          )}
          {axis && (
            <div className={styles.axis}>
              <Ticks axis={axis} />
              <Track period={period} axis={axis} />
            </div>
          )}
        </div>
      )}
      <TextField
        form={form}
        name="period_from_reason"
        optional
        rows={2}
        note={t("notes.period_from_reason")}
      />
      <TextField form={form} name="period_to_reason" optional rows={2} note={t("notes.period_to_reason")} />
    </>
  );
}
