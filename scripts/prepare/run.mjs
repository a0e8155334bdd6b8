import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The checkout's top folder. */
export const root = fileURLToPath(new URL("../..", import.meta.url));

/** Children still running, so that an interrupted parent ends them. */
const running = new Set();

/** A command that ended badly; its output is kept to be shown. */
export class CommandFailed extends Error {}

/** Something that the person at the terminal has to change; its message says what. */
export class Refused extends Error {}

/**
 * Every child has a process group of its own: a Ctrl-C of the terminal reaches this process alone, which passes it
 * on once, so that a child that is already closing its database is not interrupted by a second signal.
 */
const ownGroup = { detached: true };

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
      ...ownGroup,
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
    const child = spawn(program, words, {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ["ignore", "inherit", "inherit"],
      ...ownGroup,
    });
    running.add(child);
    child.on("error", reject);
    child.on("close", (code) => {
      running.delete(child);
      resolve(code ?? 1);
    });
  });
}

/** Ends everything that is still running, with what it started itself. */
export function endChildren(signal) {
  for (const { pid } of running) {
    try {
      process.kill(-pid, signal);
    } catch (error) {
      if (error.code !== "ESRCH") throw error;
    }
  }
}

/**
 * Passes the first request to stop on to the children, and counts the same request made again within two seconds
 * as the same one: npm and the terminal both send it. Asked again later, children that did not end are killed.
 * An npm that was told to stop ends without telling the program it runs, so its going is a request as well.
 * @param {() => void} whenStopping told once
 */
export function stopChildrenWhenAsked(whenStopping) {
  let asked = 0;
  const stop = () => {
    if (asked === 0) {
      asked = Date.now();
      whenStopping();
      endChildren("SIGTERM");
    } else if (Date.now() - asked > 2000) endChildren("SIGKILL");
  };
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, stop);
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent && asked === 0) stop();
  }, 500).unref();
}
