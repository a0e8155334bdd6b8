"use client";

import { useTranslations } from "next-intl";
import { useMemo } from "react";
import type { WorksheetState } from "#core/dating/answer-worksheet-form";
import { estimate } from "#core/dating/estimate";
import {
  addressOf,
  evidenceOf,
  priorOf,
  takeAddressOf,
  type Worksheet,
  worksheetQuery,
} from "#core/dating/worksheet";
import { DateChart } from "../dating/date-chart.tsx";
import { FieldErrorNote } from "../field-error.tsx";
import { AnswerAddress } from "../look-up/answer-address.tsx";
import plain from "../plain.module.css";
import { Cautions, Conflicts, HardBounds, WouldNarrow } from "./estimate-against.tsx";
import { EstimateHead } from "./estimate-head.tsx";
import { EstimateWhy } from "./estimate-why.tsx";
import { EvidenceForm } from "./evidence-form.tsx";
import { EvidenceList } from "./evidence-list.tsx";
import { exampleAddress } from "./example.ts";
import { KeptSheet } from "./kept-sheet.tsx";
import { PrintButton } from "./print-button.tsx";
import { SheetHeadForm } from "./sheet-head-form.tsx";
import { useWorksheet } from "./use-worksheet.ts";
import styles from "./worksheet.module.css";

type WorksheetBenchProps = { readonly initial: WorksheetState; readonly thisYear: number };

/** What is wrong with the address, which no form has a field for. */
const OF_ADDRESS = ["worksheet", "evidence"];
const ELSEWHERE = [...OF_ADDRESS, "years"];

/** The whole worksheet: what came out above, what was put in below, and why. With scripts it answers at once. */
export function WorksheetBench({ initial, thisYear }: WorksheetBenchProps) {
  const t = useTranslations("worksheet");
  const sheet = useWorksheet(initial);
  const { state } = sheet;
  const { worksheet } = state;
  const evidence = useMemo(() => evidenceOf(worksheet), [worksheet]);
  const found = useMemo(
    () => (evidence.length === 0 ? null : estimate(evidence, priorOf(worksheet, thisYear))),
    [evidence, worksheet, thisYear],
  );
  const labels = Object.fromEntries(
    worksheet.pieces.map(({ kind }, i) => [
      String(i + 1),
      t("piece", { place: i + 1, kind: t(`kinds.${kind}`) }),
    ]),
  );
  const unreadable = state.errors.filter(({ field }) => OF_ADDRESS.includes(field));
  return (
    <>
      <Head worksheet={worksheet} />
      <Unreadable errors={unreadable} />
      <KeptSheet worksheet={worksheet} />
      {found && (
        <section aria-label={t("estimate")} className={styles.found}>
          <EstimateHead estimate={found} />
          <DateChart estimate={found} evidence={evidence} labels={labels} brief />
        </section>
      )}
      <div className={`${styles.columns} ${found ? styles.two : ""}`}>
        <div className={styles.put}>
          <section aria-labelledby="evidence">
            <h2 id="evidence" tabIndex={-1} ref={sheet.heading}>
              {t("evidence")}
            </h2>
            <EvidenceList worksheet={worksheet} onRemove={sheet.remove} onEdit={sheet.edit} />
            <p role="status" className={styles.removed}>
              {sheet.removed && (
                <>
                  {t("removed", { place: sheet.removed.place })}{" "}
                  <button type="button" className={plain.link} onClick={sheet.putBack}>
                    {t("putBack")}
                  </button>
                </>
              )}
            </p>
          </section>
          <EvidenceForm
            key={sheet.round}
            state={{ ...state, errors: state.errors.filter(({ field }) => !ELSEWHERE.includes(field)) }}
            onType={sheet.type}
            onAdd={sheet.add}
            onCancel={sheet.cancel}
          />
          <SheetHeadForm key={`head-${sheet.round}`} state={state} onTake={sheet.takeHead} />
        </div>
        {found && (
          <div className={styles.got}>
            <EstimateWhy estimate={found} evidence={evidence} worksheet={worksheet} />
            <Conflicts estimate={found} worksheet={worksheet} />
            <HardBounds estimate={found} worksheet={worksheet} />
            <WouldNarrow estimate={found} />
            <Cautions estimate={found} />
            <section aria-labelledby="take" className={styles.take}>
              <h2 id="take">{t("take")}</h2>
              <p>{t("takeNote")}</p>
              <p>
                <a href={takeAddressOf(worksheet)} className={plain.button} rel="nofollow">
                  {t("takeLink")}
                </a>
              </p>
            </section>
            <section aria-labelledby="address" className={styles.address}>
              <h2 id="address">{t("address")}</h2>
              <p className={styles.link}>
                <AnswerAddress path={addressOf(worksheet)} />
              </p>
              <p className={plain.note}>{t("addressNote")}</p>
              <p className={styles.acts}>
                <PrintButton label={t("print")} />
                <a href="/dates">{t("begin")}</a>
              </p>
            </section>
          </div>
        )}
      </div>
    </>
  );
}

function Head({ worksheet }: { readonly worksheet: Worksheet }) {
  const t = useTranslations("worksheet");
  const isEmpty = worksheet.pieces.length === 0;
  return (
    <header className={styles.head}>
      <h1>{worksheet.title === "" ? t("title") : worksheet.title}</h1>
      {worksheet.title !== "" && <p className={styles.kicker}>{t("title")}</p>}
      {isEmpty && <p className={plain.lede}>{t("lede")}</p>}
      <p className={styles.ways}>
        {isEmpty && (
          <a href={exampleAddress(t)} className={plain.quiet}>
            {t("example")}
          </a>
        )}
        <a href={`/dates/decoders?${worksheetQuery(worksheet)}`}>{t("decoders")}</a>
        <a href="/dates/sizes">{t("sizes")}</a>
      </p>
      {isEmpty && <p className={plain.note}>{t("exampleNote")}</p>}
    </header>
  );
}

function Unreadable({ errors }: { readonly errors: WorksheetState["errors"] }) {
  const t = useTranslations("worksheet");
  if (errors.length === 0) return null;
  return (
    <div className={styles.unreadable}>
      {errors.map((error) => (
        <FieldErrorNote key={`${error.rule} ${error.received} ${error.params?.place ?? ""}`} error={error} />
      ))}
      <p>{t("unreadable")}</p>
    </div>
  );
}
