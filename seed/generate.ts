import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import { careful, hasty } from "./render/conditions.ts";
import { photograph } from "./render/photograph.ts";
import { randomFrom } from "./render/random.ts";
import type { Subject } from "./render/subject.ts";
import { buildScenario, type Scenario } from "./scenario/build.ts";
import { creditFor, sayWhatIsShown } from "./scenario/captions.ts";
import type { PhotographRow, TryRow } from "./scenario/demo.ts";
import { numberImpressions } from "./scenario/impressions.ts";

const here = dirname(fileURLToPath(import.meta.url));
const SEED = "ennerwold";
const BYTES = 13_600;
const PROCESSES = 2;

interface Task {
  file: string;
  /** Entry and number, or the key of a mark to try. */
  name: string;
  number: number;
  kind: "entry" | "try" | "question";
}

/** How many photographs an entry has: three to six. */
function countFor(key: string): number {
  const chance = randomFrom(`${SEED}/count/${key}`).next();
  return chance < 0.27 ? 3 : chance < 0.69 ? 4 : chance < 0.92 ? 5 : 6;
}

function tasksOf(scenario: Scenario): Task[] {
  const tasks: Task[] = [];
  for (const { key } of scenario.entries) {
    for (let n = 0; n < countFor(key); n++)
      tasks.push({ file: `photographs/${key}-${n + 1}.webp`, name: key, number: n, kind: "entry" });
  }
  for (const { key } of scenario.tries)
    tasks.push({ file: `try/${key}.webp`, name: key, number: 0, kind: "try" });
  for (const { key } of scenario.questions)
    tasks.push({ file: `questions/${key}.webp`, name: key, number: 0, kind: "question" });
  return tasks;
}

function subjectOf(scenario: Scenario, { kind, name }: Task): Subject | undefined {
  if (kind === "entry") return scenario.subjects.get(name);
  return (kind === "try" ? scenario.tries : scenario.questions).find(({ key }) => key === name)?.subject;
}

async function develop(scenario: Scenario, task: Task, out: string): Promise<PhotographRow> {
  const random = randomFrom(`${SEED}/${task.kind}/${task.name}/${task.number}`);
  const attempt = scenario.tries.find((one) => one.key === task.name);
  const subject = subjectOf(scenario, task);
  if (!subject) throw new Error(`photograph: must be of a mark in the scenario. Received "${task.name}".`);
  const conditions = task.kind === "entry" ? careful(subject, task.number, random) : hasty(subject, random);
  const taken = await photograph(subject, conditions, random, BYTES);
  writeFileSync(join(out, task.file), taken.webp);
  const place = scenario.entries.find((entry) => entry.key === task.name)?.place_on_object ?? "";
  const { x, y, width, height } = taken.region;
  return {
    file: task.file,
    entry: task.kind === "entry" ? task.name : (attempt?.entry ?? ""),
    shows: sayWhatIsShown(subject, conditions, place),
    region: `${x},${y},${width},${height}`,
    turn: String(taken.turn),
    pixels_per_mm: String(taken.pixelsPerMillimetre),
    licence: "CC BY 4.0",
    credit: creditFor(random),
    impression: "",
  };
}

const csv = (rows: readonly Record<string, string>[], columns: readonly string[]): string =>
  `${[columns, ...rows.map((row) => columns.map((column) => row[column] ?? ""))].map((cells) => cells.map((cell) => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(",")).join("\n")}\n`;

/** One of several processes: takes every n-th photograph and prints its row. */
async function work(
  scenario: Scenario,
  tasks: readonly Task[],
  part: number,
  parts: number,
  out: string,
): Promise<void> {
  for (let i = part; i < tasks.length; i += parts) {
    const task = tasks[i];
    if (task) process.stdout.write(`${JSON.stringify(await develop(scenario, task, out))}\n`);
  }
}

function employ(part: number, args: readonly string[], onRow: (row: PhotographRow) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      [...process.execArgv, fileURLToPath(import.meta.url), ...args, "--part", String(part)],
      { stdio: ["ignore", "pipe", "inherit"] },
    );
    let rest = "";
    child.stdout.on("data", (chunk: Buffer) => {
      const lines = (rest + chunk.toString("utf8")).split("\n");
      rest = lines.pop() ?? "";
      for (const line of lines) onRow(JSON.parse(line) as PhotographRow);
    });
    child.on("error", reject);
    child.on("close", (code) =>
      code === 0
        ? resolve()
        : reject(new Error(`photographs: part ${part} must end with 0. Received ${code}.`)),
    );
  });
}

function option(name: string): string | undefined {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? undefined : process.argv[at + 1];
}

function writeTexts(scenario: Scenario, out: string): void {
  const lines = (rows: readonly unknown[]): string =>
    `${rows.map((row) => JSON.stringify(row)).join("\n")}\n`;
  writeFileSync(join(out, "makers.jsonl"), lines(scenario.makers));
  writeFileSync(join(out, "entries.jsonl"), lines(scenario.entries));
  const tries: TryRow[] = scenario.tries.map(({ key, title, entry, note }) => ({
    file: `${key}.webp`,
    title,
    entry,
    note,
  }));
  writeFileSync(
    join(out, "try", "try.csv"),
    csv(tries as unknown as Record<string, string>[], ["file", "title", "entry", "note"]),
  );
}

const COLUMNS = ["file", "entry", "shows", "region", "turn", "pixels_per_mm", "licence", "credit"] as const;

function writePhotographs(rows: readonly PhotographRow[], out: string): void {
  const numbered = numberImpressions(rows) as unknown as Record<string, string>[];
  writeFileSync(join(out, "photographs.csv"), csv(numbered, [...COLUMNS, "impression"]));
}

/** Puts rows of some entries among those that are there, in the order of the entries. */
function replaceRows(rows: readonly PhotographRow[], only: string, scenario: Scenario, out: string): void {
  const there = parse(readFileSync(join(out, "photographs.csv"), "utf8"), {
    columns: true,
  }) as PhotographRow[];
  const taken = rows
    .filter(({ file }) => file.startsWith("photographs/"))
    .toSorted((a, b) => a.file.localeCompare(b.file));
  const all = [...there.filter(({ entry }) => !entry.startsWith(only)), ...taken];
  writePhotographs(
    scenario.entries.flatMap(({ key }) => all.filter(({ entry }) => entry === key)),
    out,
  );
}

/** Options: `--out FOLDER`, `--texts` (no photographs; the table of those that are there is numbered anew), `--only PREFIX` (photographs of these keys only; the rows of others stay). */
async function main(): Promise<void> {
  const out = option("out") ?? join(here, "demo");
  for (const folder of ["photographs", "try", "questions"]) mkdirSync(join(out, folder), { recursive: true });
  const scenario = buildScenario(join(here, "scenario"));
  const only = option("only");
  const tasks = tasksOf(scenario).filter((task) => only === undefined || task.name.startsWith(only));
  const part = option("part");
  if (part !== undefined) return work(scenario, tasks, Number(part), PROCESSES, out);
  writeTexts(scenario, out);
  console.log(
    `${scenario.makers.length} makers, ${scenario.entries.length} entries, ${tasks.length} photographs to take`,
  );
  if (process.argv.includes("--texts")) {
    const there = readFileSync(join(out, "photographs.csv"), "utf8");
    return writePhotographs(parse(there, { columns: true }) as PhotographRow[], out);
  }
  const started = Date.now();
  const rows = new Map<string, PhotographRow>();
  const passed = ["--out", out, ...(only === undefined ? [] : ["--only", only])];
  await Promise.all(
    Array.from({ length: PROCESSES }, (_, n) =>
      employ(n, passed, (row) => {
        rows.set(row.file, row);
        if (rows.size % 50 === 0)
          console.log(`${rows.size} of ${tasks.length}, ${((Date.now() - started) / 1000).toFixed(0)} s`);
      }),
    ),
  );
  if (only !== undefined) return replaceRows([...rows.values()], only, scenario, out);
  const rowsOf = (kind: Task["kind"]) =>
    tasks.filter((task) => task.kind === kind).map((task) => rows.get(task.file));
  const table = (kind: Task["kind"]) => csv(rowsOf(kind) as unknown as Record<string, string>[], COLUMNS);
  const ordered = rowsOf("entry");
  writePhotographs(
    ordered.filter((row) => row !== undefined),
    out,
  );
  writeFileSync(join(out, "questions", "photographs.csv"), table("question"));
  const kept = new Set(tasks.map((task) => task.file));
  for (const folder of ["photographs", "try", "questions"]) {
    for (const name of readdirSync(join(out, folder)))
      if (name.endsWith(".webp") && !kept.has(`${folder}/${name}`)) rmSync(join(out, folder, name));
  }
  const bytes = [...kept].reduce((sum, file) => sum + readFileSync(join(out, file)).length, 0);
  console.log(
    `${ordered.length} photographs and ${scenario.tries.length} to try, ${(bytes / 1e6).toFixed(2)} MB, ${((Date.now() - started) / 1000).toFixed(0)} s`,
  );
}

await main();
