import type { FieldError } from "#core/field-error";
import { fail, ok, type Result } from "#core/result";
import type { Members } from "../ports.ts";

/** Members of similar names that are looked through for one of that very name. */
const MOST = 50;

/**
 * The members whom an author names as having written with them: by the address of their page, or by name where no
 * other member has the same.
 * @returns their ids
 */
export async function findCoAuthors(
  members: Members,
  named: readonly string[],
): Promise<Result<readonly string[], readonly FieldError[]>> {
  const found = await Promise.all(named.map((name) => find(members, name)));
  const errors = found.flatMap((each) => (each.ok ? [] : [each.error]));
  return errors.length > 0 ? fail(errors) : ok(found.flatMap((each) => (each.ok ? [each.value] : [])));
}

async function find(members: Members, named: string): Promise<Result<string, FieldError>> {
  const id = /(?:^|\/members\/)([0-9a-f]{8}-[0-9a-f-]{27})\/?$/i.exec(named)?.[1];
  if (id !== undefined) {
    const member = await members.find(id.toLowerCase());
    return member ? ok(member.id) : refuse("co-author-unknown", named);
  }
  const alike = await members.search(named, 0, MOST);
  const same = alike.filter(({ name }) => name.toLowerCase() === named.toLowerCase());
  const [only] = same;
  if (!only) return refuse("co-author-unknown", named);
  return same.length === 1 ? ok(only.id) : refuse("co-author-ambiguous", named, same.length);
}

const refuse = (rule: string, received: string, count = 0): Result<never, FieldError> =>
  fail({ field: "co_authors", rule, received, ...(count > 0 ? { params: { count } } : {}) });
