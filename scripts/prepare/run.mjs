import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The checkout's top folder. */
export const root = fileURLToPath(new URL("../..", import.meta.url));

/** Children still running, so that an interrupted parent ends them. */
const running = new Set();

/** A command that ended badly; its output is kept to be shown. */
export class CommandFailed extends Error {}

/**
 * Runs a program to its end, with its output kept aside and shown only when it fails.
 * @param {string} program
 * @param {readonly string[]} words
 * @param {{ env?: Record<string, string>, onLine?: (line: string) => void }} [options] onLine is told every
 *   line of standard output as it comes
 * @returns {Promise<void>}
 */
export function run(program, words, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, {
      cwd: root,
      env: { ...process.env, ...options.env },
      stdio: ["ignore", "pipe", "pipe"],
    });
    running.add(child);
    let kept = "";
    let open = "";
    const keep = (text) => {
      kept = (kept + text).slice(-20_000);
    };
    child.stdout.setEncoding("utf8").on("data", (text) => {
      keep(text);
      if (!options.onLine) return;
      const lines = (open + text).split("\n");
      open = lines.pop() ?? "";
      for (const line of lines) options.onLine(line);
    });
    child.stderr.setEncoding("utf8").on("data", keep);
    child.on("error", reject);
    child.on("close", (code, signal) => {
      running.delete(child);
      if (code === 0) resolve();
      else reject(new CommandFailed(`${program} ${words.join(" ")}: ended with ${signal ?? code}\n${kept}`));
    });
  });
}

/**
 * Runs a program with its output on this terminal.
 * @returns {Promise<number>} its exit status
 */
export function show(program, words, env = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, { cwd: root, env: { ...process.env, ...env }, stdio: "inherit" });
    running.add(child);
    child.on("error", reject);
    child.on("close", (code) => {
      running.delete(child);
      resolve(code ?? 1);
    });
  });
}

/** Passes a signal on to everything that is still running. */
export function endChildren(signal) {
  for (const child of running) child.kill(signal);
}
