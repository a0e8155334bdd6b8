/** Says once, before the tests that open databases, when those on a server can't be run. */
export function setup(): void {
  if (!process.env.TEST_DATABASE_URL) {
    console.log(
      "TEST_DATABASE_URL names no Postgres with pgvector: the tests on a database server are skipped.",
    );
  }
}
