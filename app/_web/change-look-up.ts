import { deleteLookUp } from "#usecases/forget-look-ups";
import { keepLookUp } from "#usecases/keep-look-up";
import { live } from "./live.ts";
import { redirect } from "./look-up-answer.ts";
import { ownerHash } from "./owner.ts";

/** The owner of a look-up keeps it, lets it go after its time again, or deletes it. */
export async function changeLookUp(id: string, act: string): Promise<Response> {
  const owner = await ownerHash();
  if (owner === null) return notFound(id);
  const wired = await live();
  switch (act) {
    case "keep":
      return (await keepLookUp(wired, { id, ownerHash: owner, days: null }))
        ? redirect(`/look-ups/${id}?said=kept#keeping`)
        : notFound(id);
    case "let-go": {
      const days = wired.environment.lookUpDays;
      return (await keepLookUp(wired, { id, ownerHash: owner, days }))
        ? redirect(`/look-ups/${id}?said=let-go#keeping`)
        : notFound(id);
    }
    case "delete":
      return (await deleteLookUp(wired, { id, ownerHash: owner }))
        ? redirect("/?said=deleted")
        : notFound(id);
    default:
      return notFound(act);
  }
}

const notFound = (received: string) =>
  Response.json({ error: { field: "look-up", rule: "look-up-unknown", received } }, { status: 404 });
