import { removeOldVectors } from "#usecases/remove-old-vectors";
import { fillModels } from "./fill-models.ts";
import type { Live } from "./live.ts";

const TEN_MINUTES = 10 * 60_000;

/**
 * Brings a new model in while the host runs, looks every ten minutes whether a photograph lacks its vector, and
 * removes what retired models have left when their time is over. Nobody waits for it.
 */
export function keepModels(wired: Live): void {
  const round = () =>
    fillAndRemove(wired).catch((error: unknown) => {
      process.stderr.write(`Re-embedding failed and is tried again in ten minutes: ${String(error)}\n`);
    });
  void round();
  setInterval(round, TEN_MINUTES).unref();
}

async function fillAndRemove(wired: Live): Promise<void> {
  let told = false;
  const { model, done, of, failures, switched } = await fillModels(wired, {
    onProgress: (at) => {
      if (!told && at.done < at.of)
        process.stdout.write(`${at.model}: ${at.of - at.done} of ${at.of} photographs are to be embedded\n`);
      told = true;
    },
  });
  if (switched) process.stdout.write(`${model}: answers from now on, for ${done} of ${of} photographs\n`);
  if (failures > 0)
    process.stdout.write(`${model}: ${failures} photographs can't be embedded; npm run reembed names them\n`);
  for (const removed of await removeOldVectors(wired, wired.environment.oldVectorsDays))
    process.stdout.write(`${removed}: its vectors and kept files were removed\n`);
}
