import type { FieldError } from "#core/field-error";
import type { Alignment } from "#core/photographs/alignment";
import type { Result } from "#core/result";
import type { Photographed } from "#ml/verify";
import type { Aligner, ImageToAlign } from "../_usecases/ports.ts";
import { rememberLast } from "./remember-last.ts";
import { createWorkerPool } from "./worker-pool.ts";

/** Answers kept in memory; one is about 30 kB. */
const KEPT = 200;
/** One alignment takes about a second: whoever is twentieth waits as long as anyone would. */
const LIMITS = { threads: 1, waiting: 20, milliseconds: 60_000 };

type Asked = { readonly query: Photographed; readonly reference: Photographed };
type Align = (asked: Asked) => Promise<Result<Alignment, FieldError>>;

/** Aligns by local features in a thread of its own, and remembers the latest answers by images and regions. */
export function createAligner(
  align: Align = createWorkerPool<Asked, Alignment>("alignPair", LIMITS).run,
): Aligner {
  const remember = rememberLast<Awaited<ReturnType<Align>>>(KEPT, ({ ok }) => ok);
  return {
    align: (query, reference) =>
      remember(`${nameOf(query)} ${nameOf(reference)}`, () =>
        align({
          query: { photograph: query.bytes, region: query.region },
          reference: { photograph: reference.bytes, region: reference.region },
        }),
      ),
  };
}

function nameOf({ sha256, region: { x, y, width, height, turn } }: ImageToAlign): string {
  return [sha256, x, y, width, height, turn].join(",");
}
