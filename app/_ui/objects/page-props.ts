/** What Next gives a page of an object file. */
export type ObjectPageProps = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};
