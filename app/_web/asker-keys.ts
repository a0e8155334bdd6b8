import { cookies } from "next/headers";

const NAME = "countermark-asker";
const YEAR = 365 * 24 * 60 * 60;
/** Questions whose key one browser holds: as many as fit into a cookie that goes with every request. */
const MOST = 24;
const PAIR = /^([\w-]{1,64})\.([\w-]{43})$/;

/** The key that this browser holds of a question; null when it holds none. */
export async function askerKey(question: string): Promise<string | null> {
  return (await held()).find(({ id }) => id === question)?.key ?? null;
}

/** Has the browser hold the key of a question, out of reach of scripts; the oldest goes when there are too many. */
export async function holdKey(question: string, key: string, secure: boolean): Promise<void> {
  const others = (await held()).filter(({ id }) => id !== question);
  const all = [...others, { id: question, key }].slice(-MOST);
  const value = all.map(({ id, key }) => `${id}.${key}`).join("~");
  (await cookies()).set(NAME, value, { httpOnly: true, sameSite: "lax", secure, path: "/", maxAge: YEAR });
}

/** Does the text look like a key? */
export const isKey = (text: string): boolean => /^[\w-]{43}$/.test(text);

async function held(): Promise<readonly { readonly id: string; readonly key: string }[]> {
  const value = (await cookies()).get(NAME)?.value ?? "";
  return value.split("~").flatMap((pair) => {
    const [, id, key] = PAIR.exec(pair) ?? [];
    return id !== undefined && key !== undefined ? [{ id, key }] : [];
  });
}
