import Link from "next/link";
import { useFormatter, useTranslations } from "next-intl";
import type { Estimate } from "#core/dating/estimate";
import { type Reason, reasonsOf } from "#core/dating/reasons";
import { addressOf } from "#core/dating/worksheet";
import type { ItemRef } from "#core/object-files/derived";
import type { FileEvidence } from "#core/object-files/evidence";
import type { KeptFile } from "#core/object-files/kept-file";
import { pieceOfEvidence, worksheetOf } from "#core/object-files/worksheet-of-file";
import { DateChart } from "../dating/date-chart.tsx";
import plain from "../plain.module.css";
import { Said } from "../said.tsx";
import { wordPiece, wordTrust } from "../worksheet/piece-words.ts";
import { EstimateWords } from "./estimate-words.tsx";
import { More } from "./more.tsx";
import styles from "./objects.module.css";
import { RemoveItem } from "./remove-item.tsx";

type EvidencePartProps = {
  readonly kept: KeptFile;
  readonly estimate: Estimate;
  readonly evidence: readonly FileEvidence[];
  readonly mayChange: boolean;
  /** What was just taken from a worksheet, and what the file had of it already. */
  readonly taken: { readonly taken: number; readonly known: number } | null;
};

/** A longer list is out of the way until it is wanted. */
const SHORT_LIST = 8;

/** When it was made, by every dated thing in the file; all of it can be looked into on a worksheet. */
export function EvidencePart({ kept, estimate, evidence, mayChange, taken }: EvidencePartProps) {
  const t = useTranslations("objectPages");
  const name = useEvidenceName();
  const { worksheet, left } = worksheetOf(kept.content, evidence, estimate);
  const labels = Object.fromEntries(evidence.map((each) => [each.id, name(each)]));
  return (
    <section className={styles.section} aria-labelledby="evidence">
      <h2 id="evidence">{t("finding.estimate")}</h2>
      {taken && <Said>{t("take.done", taken)}</Said>}
      <EstimateWords estimate={estimate} />
      <Conflicts conflicts={estimate.conflicts} labels={labels} />
      {evidence.length > 0 && (
        <>
          <More words={t("evidence.chart")}>
            <DateChart estimate={estimate} evidence={evidence} labels={labels} />
          </More>
          <More
            words={t("evidence.all", { count: evidence.length })}
            isOpen={taken !== null || evidence.length <= SHORT_LIST}
          >
            <ol className={`${styles.list} ${styles.column}`}>
              {reasonsOf(estimate, evidence).flatMap((reason) => {
                const piece = evidence.find(({ id }) => id === reason.evidenceId);
                return piece
                  ? [
                      <li key={piece.id}>
                        <EvidenceWords piece={piece} reason={reason} />
                        {mayChange && piece.item.list === "pieces" && (
                          <RemoveItem
                            kept={kept}
                            list="pieces"
                            id={piece.item.id}
                            part="finding"
                            about={name(piece)}
                          />
                        )}
                      </li>,
                    ]
                  : [];
              })}
            </ol>
          </More>
        </>
      )}
      <p>
        <a href={addressOf(worksheet)} className={plain.quiet} rel="nofollow">
          {t("evidence.worksheet")}
        </a>
      </p>
      {left > 0 && <p className={plain.note}>{t("evidence.left", { count: left })}</p>}
    </section>
  );
}

/** Sets shown before the rest is out of the way. */
const SHOWN = 5;

type ConflictsProps = {
  readonly conflicts: Estimate["conflicts"];
  readonly labels: Readonly<Record<string, string>>;
};

/** Which pieces cannot all be true. */
function Conflicts({ conflicts, labels }: ConflictsProps) {
  const t = useTranslations("objectPages.evidence");
  const format = useFormatter();
  if (conflicts.length === 0) return null;
  const quoted = (id: string) => t("quoted", { piece: (labels[id] ?? "").replace(/\.$/, "") });
  // Two marks of one entry contradict a story in the same words.
  const said = [...new Set(conflicts.map((set) => format.list(set.map(quoted))))];
  const lines = said.map((words) => <li key={words}>{words}</li>);
  return (
    <div className={styles.against}>
      <h3>{t("conflicts")}</h3>
      <ul className={styles.points}>{lines.slice(0, SHOWN)}</ul>
      {lines.length > SHOWN && (
        <More words={t("moreConflicts", { count: lines.length - SHOWN })}>
          <ul className={styles.points}>{lines.slice(SHOWN)}</ul>
        </More>
      )}
    </div>
  );
}

/** A piece in a few words: its reason, or its date where it has none. */
export function useEvidenceName(): (evidence: FileEvidence) => string {
  const sheet = useTranslations("worksheet");
  const period = useTranslations("period");
  return (evidence) =>
    evidence.reason ||
    `${sheet(`kinds.${evidence.kind}`)}: ${wordPiece(pieceOfEvidence(evidence), sheet, period)}`;
}

type EvidenceWordsProps = { readonly piece: FileEvidence; readonly reason: Reason };

/** What a piece states, how much it tells, where it stands, and which part of the file it comes from. */
function EvidenceWords({ piece, reason }: EvidenceWordsProps) {
  const t = useTranslations("objectPages.evidence");
  const sheet = useTranslations("worksheet");
  const dating = useTranslations("dating");
  const period = useTranslations("period");
  const format = useFormatter();
  const { source, basis, exceptions } = piece;
  const bits = format.number(reason.params.bits, { maximumFractionDigits: 2, minimumFractionDigits: 2 });
  const from: ItemRef["list"] = piece.item.list;
  return (
    <>
      <h3>{sheet(`kinds.${piece.kind}`)}</h3>
      <p className={styles.sentence}>{wordPiece(pieceOfEvidence(piece), sheet, period)}</p>
      {piece.reason && <p>{piece.reason}</p>}
      {exceptions && <p>{sheet("exceptions", { exceptions })}</p>}
      <p className={`${plain.note} ${styles.sentence}`}>
        {wordTrust(piece.reliability, sheet)}.{" "}
        {t("tells", { strength: dating(`strength.${reason.strength}`), bits })}{" "}
        {source.startsWith("/entries/") ? (
          <Link href={source}>{t("entry")}</Link>
        ) : source ? (
          sheet("source", { source })
        ) : (
          sheet("noSource")
        )}
        {basis && ` (${sheet(`bases.${basis}`)})`} {t(`from.${from as "pieces"}`)}
      </p>
    </>
  );
}
