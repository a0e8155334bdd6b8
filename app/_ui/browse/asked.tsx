/** What the address of a search asks for, as it was typed. */
const ASKED = ["words", "kind", "technique", "material", "maker", "period"] as const;
export type Asked = Readonly<Record<(typeof ASKED)[number], string>>;

type Params = Readonly<Record<string, string | string[] | undefined>>;

export function askedOf(params: Params): Asked {
  const first = (name: string) => {
    const value = params[name];
    return (Array.isArray(value) ? value[0] : value) ?? "";
  };
  return {
    words: first("words"),
    kind: first("kind"),
    technique: first("technique"),
    material: first("material"),
    maker: first("maker"),
    period: first("period"),
  };
}

/** The address of the same search with some parts changed; an empty part is left out. */
export function addressOf(asked: Asked, changed: Partial<Asked> & { readonly page?: string } = {}): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...asked, ...changed })) if (value) params.set(name, value);
  const query = params.toString();
  return query === "" ? "/entries" : `/entries?${query}`;
}
