import { closeReviews } from "#usecases/close-reviews";
import { forgetExpired } from "#usecases/forget-look-ups";
import { agreement } from "./agreement.ts";
import { stopFilling } from "./fill-models.ts";
import { keepModels } from "./keep-models.ts";
import { live } from "./live.ts";

const HOUR = 60 * 60 * 1000;
const MINUTE = 60 * 1000;

/**
 * What this process does once, at its start: opens everything, and from then on brings a new model in, forgets
 * look-ups and sessions whose time is over, and closes reviews that are.
 */
export async function begin(): Promise<void> {
  const wired = await live();
  wired.database.announce(
    process.env.COUNTERMARK_ADDRESS ?? `http://127.0.0.1:${process.env.PORT ?? "3000"}`,
  );
  const forget = () =>
    Promise.all([forgetExpired(wired), wired.sessions.forget(wired.clock.now())]).catch((error: unknown) => {
      process.stderr.write(
        `Forgetting old look-ups and sessions failed and is tried again in an hour: ${String(error)}\n`,
      );
    });
  await forget();
  setInterval(forget, HOUR).unref();
  keepModels(wired);
  const close = () =>
    closeReviews(wired).catch((error: unknown) => {
      process.stderr.write(`Closing reviews failed and is tried again in a minute: ${String(error)}\n`);
    });
  // Read ahead of whoever opens the moderators' page.
  const readAgreement = () =>
    agreement().catch((error: unknown) => {
      process.stderr.write(`Reading how far reviewers agree failed: ${String(error)}\n`);
    });
  void close().then(readAgreement);
  setInterval(() => void close().then(readAgreement), MINUTE).unref();
  for (const signal of ["SIGINT", "SIGTERM"] as const)
    process.once(
      signal,
      () =>
        void stopFilling()
          .then(() => wired.database.close())
          .finally(() => process.exit(0)),
    );
}
