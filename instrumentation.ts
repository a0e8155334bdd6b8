/** Opens the database and loads the model before the first visitor comes. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== "nodejs") return;
  const { begin } = await import("./app/_web/begin.ts");
  await begin();
}
