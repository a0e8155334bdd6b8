import { randomBytes } from "node:crypto";
import {
  closeSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from "node:fs";
import { join } from "node:path";

/** Who holds a data folder. Only who may read the folder can read the key, so it stands for being its operator. */
export type Holder = {
  readonly pid: number;
  readonly since: string;
  readonly address: string | null;
  readonly key: string;
};

type LockFile = Holder & { readonly started: string | null };

/** The data folder is in use by another live process. */
export class DataFolderInUse extends Error {
  constructor(
    readonly folder: string,
    readonly holder: Holder,
  ) {
    super(
      `The data folder ${folder} is in use by process ${holder.pid} since ${holder.since}${holder.address ? `, which answers at ${holder.address}` : ""}. ` +
        "The embedded database takes one process at a time: stop that one, or set COUNTERMARK_DATA to another folder.",
    );
    this.name = "DataFolderInUse";
  }
}

export type DataFolderLock = {
  /** What an operator's request to this process must carry. */
  readonly key: string;
  /** Writes into the lock where this process answers, so that others can be told. */
  announce(address: string): void;
  release(): void;
};

/**
 * Takes the data folder for this process. The embedded database itself takes no lock, and two processes on one
 * folder would each see data of their own.
 * A lock whose process is gone (or whose number now belongs to a later process) is taken over.
 * @throws DataFolderInUse naming the holder
 */
export function lockDataFolder(folder: string): DataFolderLock {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = join(folder, "lock.json");
  const mine: LockFile = {
    pid: process.pid,
    since: new Date().toISOString(),
    address: null,
    key: randomBytes(32).toString("base64url"),
    started: startOf(process.pid),
  };
  for (let attempt = 0; ; attempt++) {
    try {
      const handle = openSync(file, "wx", 0o600);
      writeSync(handle, JSON.stringify(mine));
      closeSync(handle);
      break;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
      const holder = readLock(file);
      if (holder && isAlive(holder)) throw new DataFolderInUse(folder, holder);
      if (attempt > 4) throw error;
      setAside(file);
    }
  }
  const release = () => {
    if (readLock(file)?.pid === process.pid) rmSync(file, { force: true });
  };
  process.once("exit", release);
  return {
    key: mine.key,
    announce: (address) => {
      const next = `${file}.${process.pid}`;
      writeFileSync(next, JSON.stringify({ ...mine, address }), { mode: 0o600 });
      renameSync(next, file);
    },
    release: () => {
      process.removeListener("exit", release);
      release();
    },
  };
}

/** The live process that holds a data folder, or null. */
export function holderOf(folder: string): Holder | null {
  const holder = readLock(join(folder, "lock.json"));
  return holder && isAlive(holder) ? holder : null;
}

function readLock(file: string): LockFile | null {
  try {
    return JSON.parse(readFileSync(file, "utf8")) as LockFile;
  } catch {
    return null;
  }
}

/** Renames a dead lock away; of two processes that try, one fails and looks again. */
function setAside(file: string): void {
  const aside = `${file}.dead.${process.pid}`;
  try {
    renameSync(file, aside);
    rmSync(aside, { force: true });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
  }
}

function isAlive(holder: LockFile): boolean {
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ESRCH") return false;
  }
  const started = startOf(holder.pid);
  return holder.started === null || started === null || started === holder.started;
}

/** When a process began, in the kernel's ticks, so that a number used again is not taken for the old process. */
function startOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
  } catch {
    return null;
  }
}
