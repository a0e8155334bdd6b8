import { forgetExpired } from "#usecases/forget-look-ups";
import { stopFilling } from "./fill-models.ts";
import { keepModels } from "./keep-models.ts";
import { live } from "./live.ts";

const HOUR = 60 * 60 * 1000;

/**
 * What this process does once, at its start: opens everything, and from then on brings a new model in and forgets
 * look-ups whose time is over.
 */
export async function begin(): Promise<void> {
  const wired = await live();
  wired.database.announce(
    process.env.COUNTERMARK_ADDRESS ?? `http://127.0.0.1:${process.env.PORT ?? "3000"}`,
  );
  const forget = () =>
    forgetExpired(wired).catch((error: unknown) => {
      process.stderr.write(
        `Forgetting old look-ups failed and is tried again in an hour: ${String(error)}\n`,
      );
    });
  await forget();
  setInterval(forget, HOUR).unref();
  keepModels(wired);
  for (const signal of ["SIGINT", "SIGTERM"] as const)
    process.once(
      signal,
      () =>
        void stopFilling()
          .then(() => wired.database.close())
          .finally(() => process.exit(0)),
    );
}
