import { join } from "node:path";

/** A face of the report; each comes in a file for every script. */
export type Face = "text" | "strong" | "sans" | "sans-strong";
const FILES: Readonly<Record<Face, readonly [family: string, weight: number]>> = {
  text: ["alegreya", 400],
  strong: ["alegreya", 700],
  sans: ["commissioner", 400],
  "sans-strong": ["commissioner", 600],
};

const SCRIPTS = {
  latin: /[\s\u0020-\u00ff\u0131\u0152\u0153\u02bb-\u02dc\u2000-\u206f\u20ac\u2122\u2212]/u,
  "latin-ext": /[\u0100-\u02ba\u1e00-\u1eff\u20a0-\u20c0]/u,
  greek: /[\u0370-\u03ff]/u,
  cyrillic: /[\u0400-\u045f\u0490\u0491\u04b0\u04b1\u2116]/u,
} as const;
type Script = keyof typeof SCRIPTS;
const ORDER: readonly Script[] = ["latin", "latin-ext", "greek", "cyrillic"];

const nameOf = (face: Face, script: Script) => `${face} ${script}`;

/** Makes every face known to a document; those that are not used are not embedded. */
export function registerFonts(doc: PDFKit.PDFDocument): void {
  for (const face of Object.keys(FILES) as Face[])
    for (const script of ORDER) {
      const [family, weight] = FILES[face];
      const file = `${family}-${script}-${weight}-normal.woff`;
      doc.registerFont(nameOf(face, script), join(fontFolder(family), file));
    }
}

const fontFolder = (family: string) =>
  join(/* turbopackIgnore: true */ process.cwd(), "node_modules", "@fontsource", family, "files");

/** @property scale of the size in which the rest stands */
type Run = { readonly font: string; readonly scale: number; readonly text: string };

/** Sums and addresses, whose signs have to be told apart: old-style figures are too like letters. */
const EXACT = /(\b[0-9a-f]{64}\b|https?:\/\/\S+)/;

/** A text cut where its script changes, each piece with its font; a sign that no font has becomes a question mark. */
export function runsOf(face: Face, text: string): readonly Run[] {
  const parts = text.split(EXACT).filter((part) => part !== "");
  return parts.flatMap((part) =>
    face === "text" && EXACT.test(part) ? runsIn("sans", part, 0.82) : runsIn(face, part, 1),
  );
}

function runsIn(face: Face, text: string, scale: number): readonly Run[] {
  const runs: { script: Script; text: string }[] = [];
  for (const sign of text.normalize("NFC")) {
    const script = ORDER.find((each) => SCRIPTS[each].test(sign));
    const next = { script: script ?? "latin", text: script === undefined ? "?" : sign };
    const last = runs.at(-1);
    if (last?.script === next.script) last.text += next.text;
    else runs.push(next);
  }
  return runs.map(({ script, text }) => ({ font: nameOf(face, script), scale, text }));
}
