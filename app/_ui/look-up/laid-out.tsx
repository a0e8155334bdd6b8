"use client";

import { useTranslations } from "next-intl";
import { useRef } from "react";
import { MOST_PHOTOGRAPHS } from "#core/look-ups/asked-photographs";
import { Cut } from "../cut.tsx";
import plain from "../plain.module.css";
import { FileButton } from "./file-button.tsx";
import styles from "./laid-out.module.css";
import type { Chosen } from "./use-chosen-photographs.ts";

type LaidOutProps = {
  readonly all: readonly Chosen[];
  readonly at: number;
  readonly onShow: (place: number) => void;
  readonly onRemove: (src: string) => void;
  readonly onMark: (mark: number) => void;
  readonly onFiles: (files: readonly File[], mark: number) => void;
};

/** The photographs on the bench in a row, each a press away from being cropped; and the way to lay another beside. */
export function LaidOut({ all, at, onShow, onRemove, onMark, onFiles }: LaidOutProps) {
  const t = useTranslations("several");
  const marks = Math.max(...all.map(({ mark }) => mark));
  const shown = all[at];
  const adding = useRef<HTMLDetailsElement>(null);

  function add(files: readonly File[], mark: number) {
    if (adding.current) adding.current.open = false;
    onFiles(files, mark);
  }

  return (
    <section className={styles.laid} aria-label={t("heading")}>
      {all.length > 1 && (
        <ol className={styles.row}>
          {all.map((each, place) => (
            <li key={each.src}>
              <button
                type="button"
                className={styles.thumb}
                aria-pressed={place === at}
                onClick={() => onShow(place)}
              >
                <span className={styles.mat}>
                  {each.size && each.region ? (
                    <Cut
                      image={{ sha256: "", ...each.size, region: each.region }}
                      src={each.src}
                      alt=""
                      shownAt={96}
                    />
                  ) : (
                    <span className={styles.blank}>{each.name}</span>
                  )}
                </span>
                <span className={plain.hidden}>{t("nth", { n: place + 1, count: all.length })} </span>
                <span>{t("mark", { mark: each.mark })}</span>
              </button>
              <button
                type="button"
                className={plain.link}
                onClick={() => onRemove(each.src)}
                aria-label={t("removeNth", { n: place + 1 })}
              >
                {t("remove")}
              </button>
            </li>
          ))}
        </ol>
      )}
      {all.length > 1 && shown && (
        <label className={styles.shows}>
          <span>{t("shows", { n: at + 1 })}</span>
          <select
            className={plain.input}
            value={shown.mark}
            onChange={(event) => onMark(Number(event.target.value))}
          >
            {Array.from({ length: marks }, (_, i) => i + 1).map((mark) => (
              <option key={mark} value={mark}>
                {t("mark", { mark })}
              </option>
            ))}
            <option value={marks + 1}>{t("anotherMark")}</option>
          </select>
        </label>
      )}
      {marks > 1 && <p className={plain.note}>{t("knownNote")}</p>}
      {all.length < MOST_PHOTOGRAPHS ? (
        <details className={styles.adding} ref={adding}>
          <summary>{t("add")}</summary>
          <div className={styles.kinds}>
            <Kind
              heading={t("same", { mark: shown?.mark ?? 1, marks })}
              note={t("sameNote")}
              onFiles={(files) => add(files, shown?.mark ?? 1)}
            />
            <Kind heading={t("other")} note={t("otherNote")} onFiles={(files) => add(files, marks + 1)} />
          </div>
        </details>
      ) : (
        <p className={plain.note}>{t("full", { most: MOST_PHOTOGRAPHS })}</p>
      )}
    </section>
  );
}

type KindProps = {
  readonly heading: string;
  readonly note: string;
  readonly onFiles: (files: readonly File[]) => void;
};

function Kind({ heading, note, onFiles }: KindProps) {
  const t = useTranslations("several");
  return (
    <fieldset className={styles.kind}>
      <legend>{heading}</legend>
      <p className={plain.note}>{note}</p>
      <div className={styles.ways}>
        <FileButton words={t("take")} onFiles={onFiles} camera />
        <FileButton words={t("choose")} onFiles={onFiles} />
      </div>
    </fieldset>
  );
}
