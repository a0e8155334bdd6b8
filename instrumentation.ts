/** Opens the database and loads the model before the first visitor comes. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  // The build makes pages ahead and runs this too: it must not take the data folder from the host it builds for.
  if (process.env.NEXT_PHASE === "phase-production-build") return;
  const { begin } = await import("./app/_web/begin.ts");
  await begin();
}
