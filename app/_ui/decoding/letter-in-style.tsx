import styles from "./letter-in-style.module.css";

/** Styles that a face of ours comes close to; the others are named and not drawn. */
const DRAWN: Readonly<Record<string, string | undefined>> = {
  "Roman capitals": styles.roman,
  "Roman small": styles.roman,
  "Roman/italic small": styles.italic,
  "italic small": styles.italic,
  "italic capitals": styles.italic,
  "black letter capitals": styles.black,
  "black letter small": styles.black,
  capitals: styles.plain,
};

/** A letter drawn in the manner of a style, for the eye; the style's name says it in words beside it. */
export function LetterInStyle({ letter, style }: { readonly letter: string; readonly style: string }) {
  const drawn = DRAWN[style];
  return (
    <span className={`${styles.letter} ${drawn ?? styles.undrawn}`} aria-hidden="true">
      {drawn === undefined ? "?" : letter}
    </span>
  );
}
