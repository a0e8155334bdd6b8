import type { Said } from "#core/object-files/derived";

/** A derived sentence in words: messages `objects.<group>.<is>` with its params; `t` is bound to "objects". */
export function wordSaid(
  group: "anomaly" | "argument" | "provenance" | "notice",
  said: Said,
  t: (key: never, params: never) => string,
): string {
  return t(`${group}.${said.is}` as never, said.params as never);
}
