import { expect, it } from "vitest";
import { rememberLast } from "#adapters/remember-last";

function counted(most: number, isKept?: (answer: number) => boolean) {
  const remember = rememberLast<number>(most, isKept);
  let made = 0;
  const ask = (key: string, answer: () => Promise<number> = async () => made) =>
    remember(key, () => {
      made++;
      return answer();
    });
  return { ask, made: () => made };
}

it("asks once for what is asked twice, also at the same time", async () => {
  const { ask, made } = counted(2);
  expect(await Promise.all([ask("a"), ask("a")])).toEqual([1, 1]);
  await ask("a");
  expect(made()).toBe(1);
});

it("forgets what was asked for longest ago", async () => {
  const { ask, made } = counted(2);
  for (const key of ["a", "b", "a", "c"]) await ask(key);
  expect(made()).toBe(3);
  await ask("a");
  expect(made()).toBe(3);
  await ask("b");
  expect(made()).toBe(4);
});

it("forgets a failure, and an answer that is not worth keeping", async () => {
  const { ask, made } = counted(2, (answer) => answer !== 13);
  await expect(ask("a", () => Promise.reject(new Error("no")))).rejects.toThrow("no");
  await ask("a");
  await ask("b", async () => 13);
  await ask("b");
  expect(made()).toBe(4);
});
