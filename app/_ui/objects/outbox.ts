/**
 * Forms that were filled in and have not reached the host yet, photographs included, kept in this browser's own
 * database: closing the page or losing the connection loses none of them.
 */
export type Pending = {
  /** One for each form: sent again, it takes the place of what waited. */
  readonly key: string;
  readonly at: number;
  /** The object file that it belongs to. */
  readonly file: string;
  readonly action: string;
  /** Of the form, by which what is typed into it is kept until it is here. */
  readonly name: string;
  /** What it is about, for the person who waits. */
  readonly about: string;
  readonly parts: readonly (readonly [string, string | File])[];
};

const NAME = "countermark-outbox";
const STORE = "forms";

/** Runs one step on the database; null where a browser keeps nothing. */
function step<T>(mode: IDBTransactionMode, ask: (store: IDBObjectStore) => IDBRequest<T>): Promise<T | null> {
  return new Promise((resolve) => {
    try {
      const opening = indexedDB.open(NAME, 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { keyPath: "key" });
      opening.onerror = () => resolve(null);
      opening.onsuccess = () => {
        const database = opening.result;
        const transaction = database.transaction(STORE, mode);
        const asked = ask(transaction.objectStore(STORE));
        transaction.oncomplete = () => {
          database.close();
          resolve(asked.result);
        };
        transaction.onabort = () => {
          database.close();
          resolve(null);
        };
      };
    } catch {
      resolve(null);
    }
  });
}

/** @returns false when this browser keeps nothing */
export async function putInOutbox(pending: Pending): Promise<boolean> {
  return (await step("readwrite", (store) => store.put(pending))) !== null;
}

export async function takeFromOutbox(key: string): Promise<void> {
  await step("readwrite", (store) => store.delete(key));
}

/** What waits for a file, the oldest first. */
export async function waitingIn(file: string): Promise<readonly Pending[]> {
  const all = (await step<Pending[]>("readonly", (store) => store.getAll())) ?? [];
  return all.filter((each) => each.file === file).sort((a, b) => a.at - b.at);
}
