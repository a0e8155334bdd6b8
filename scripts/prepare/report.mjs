/** What the person at the terminal sees: that a step began, that it is alive and how far, and how it ended. */

const interactive = process.stdout.isTTY === true;

/** Steps going on now; several may run side by side. */
const open = new Set();

/**
 * Runs one step and shows that it is alive: in a terminal on one line that is drawn again and again, elsewhere
 * with a line every 15 s.
 * @template T
 * @param {string} title
 * @param {(note: (text: string) => void) => Promise<T>} work is given a function that says how far it is
 * @returns {Promise<T>}
 */
export async function step(title, work) {
  const began = Date.now();
  const entry = {
    line: () => `${title}${entry.note} (${((Date.now() - began) / 1000).toFixed(1)} s)`,
    note: "",
  };
  open.add(entry);
  if (!interactive) console.log(`  … ${title}`);
  const timer = setInterval(
    () => (interactive ? draw() : console.log(`  … ${entry.line()}`)),
    interactive ? 500 : 15_000,
  );
  try {
    const result = await work((text) => {
      entry.note = `, ${text}`;
      draw();
    });
    close(entry, "✓");
    return result;
  } catch (error) {
    close(entry, "✗");
    throw error;
  } finally {
    clearInterval(timer);
  }
}

function close(entry, sign) {
  open.delete(entry);
  console.log(`${interactive ? "\r\u001b[K" : ""}  ${sign} ${entry.line()}`);
  draw();
}

function draw() {
  if (!interactive || open.size === 0) return;
  const line = `  … ${[...open].map((entry) => entry.line()).join("  |  ")}`;
  process.stdout.write(`\r\u001b[K${line.slice(0, (process.stdout.columns ?? 80) - 1)}`);
}
