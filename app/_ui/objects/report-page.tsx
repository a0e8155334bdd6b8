import Link from "next/link";
import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { Report, ReportBlock } from "#core/object-files/report/blocks";
import plain from "../plain.module.css";
import { PrintButton } from "../worksheet/print-button.tsx";
import { AskAgain } from "./ask-again.tsx";
import { LaidMark } from "./laid-mark.tsx";
import { ObjectPhoto } from "./object-photo.tsx";
import styles from "./report.module.css";

type Charts = { readonly dates: ReactNode; readonly provenance: ReactNode };
type ReportPageProps = {
  readonly report: Report<string>;
  /** Address of the file, which that of the report begins with. */
  readonly base: string;
  /** Where the file's own images are. */
  readonly images: string;
  /** The charts, as the file's pages draw them. */
  readonly charts: Charts;
  readonly isWaiting: boolean;
};

/** The whole report on one page, ready to be printed, and the ways to take it along. */
export function ReportPage({ report, base, images, charts, isWaiting }: ReportPageProps) {
  const t = useTranslations("objectReport.page");
  return (
    <article className={styles.report}>
      <header>
        <p className={styles.ways}>
          <Link href={base}>{t("back")}</Link>
        </p>
        <h1>{report.title}</h1>
        <p className={plain.note}>{report.subtitle}</p>
        <nav className={styles.ways} aria-label={t("ways")}>
          <ul>
            <li>
              <a href={`${base}/report.pdf?paper=a4`}>{t("pdfA4")}</a>
            </li>
            <li>
              <a href={`${base}/report.pdf?paper=letter`}>{t("pdfLetter")}</a>
            </li>
            <li>
              <a href={`${base}/report.jsonld`}>{t("jsonld")}</a>
            </li>
            <li>
              <a href={`${base}/report.zip`}>{t("zip")}</a>
            </li>
            <li>
              <PrintButton label={t("print")} />
            </li>
          </ul>
        </nav>
        {isWaiting && <AskAgain words={t("waiting")} />}
      </header>
      {report.sections.map(({ id, heading, blocks }) => (
        <section key={id} aria-labelledby={`report-${id}`} className={styles.section}>
          <h2 id={`report-${id}`}>{heading}</h2>
          {blocks.map((block, i) => (
            <Block key={i} {...{ block, images, charts }} />
          ))}
        </section>
      ))}
    </article>
  );
}

type BlockProps = {
  readonly block: ReportBlock<string>;
  readonly images: string;
  readonly charts: Charts;
};

function Block({ block, images, charts }: BlockProps) {
  switch (block.is) {
    case "lead":
      return <p className={styles.lead}>{block.says}</p>;
    case "note":
      return <p className={plain.note}>{block.says}</p>;
    case "heading":
      return <h3>{block.says}</h3>;
    case "quoted":
      return <blockquote>{block.says}</blockquote>;
    case "text":
      return <p>{block.says}</p>;
    case "points":
      return (
        <ul className={styles.points}>
          {block.points.map((point) => (
            <li key={point}>{exact(point)}</li>
          ))}
        </ul>
      );
    case "photographs":
      return (
        <div className={SIZES[block.size]}>
          {block.photographs.map((each) => (
            <figure key={each.sha256 + each.caption}>
              <ObjectPhoto
                image={each}
                alt={each.alt}
                base={each.from === "file" ? images : "/images"}
                shownAt={block.size === "large" ? 1280 : block.size === "small" ? 640 : 320}
              />
              {each.caption !== "" && <figcaption>{each.caption}</figcaption>}
            </figure>
          ))}
        </div>
      );
    case "laid":
      return <LaidMark {...{ block, images }} />;
    case "chart":
      return <div className={styles.chart}>{charts[block.chart]}</div>;
    case "table":
      return <Table {...block} />;
  }
}

/** A text whose sums stand in a face in which every sign can be told from every other. */
function exact(text: string): ReactNode {
  const parts = text.split(/\b([0-9a-f]{64})\b/);
  return parts.map((part, i) =>
    i % 2 === 1 ? (
      <span key={part} className={styles.exact}>
        {part}
      </span>
    ) : (
      part
    ),
  );
}

const SIZES = { large: styles.large, small: styles.beside, row: `${styles.beside} ${styles.reminding}` };

function Table({ caption, head, rows }: Extract<ReportBlock<string>, { readonly is: "table" }>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section className={styles.scroll} tabIndex={0} aria-label={caption}>
      <table className={styles.table}>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {head.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join(" ")}>
              {row.map((cell, i) => {
                const says = cell.startsWith("http") ? <a href={cell}>{cell}</a> : exact(cell);
                // On a narrow screen the cells of a row stand below each other, each under its head.
                return i === 0 ? (
                  <th key={head[i]} scope="row">
                    {says}
                  </th>
                ) : (
                  <td key={head[i]} data-head={head[i]}>
                    {says}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
