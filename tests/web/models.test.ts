import { describe, expect, inject, it } from "vitest";
import { type Holder, holderOf } from "#adapters/data-folder-lock";
import type { DescribedModel } from "#usecases/describe-models";
import type { Reembedded } from "#usecases/reembed";
import { askHost, readFromHost } from "../../scripts/ask-host.ts";

const address = inject("appAddress");

function holder(): Holder {
  const found = holderOf(inject("appData"));
  if (!found) throw new Error("Nobody holds the data folder of the app under test.");
  return found;
}

describe("the models of a running host", () => {
  it("are told to its operator", async () => {
    const models = await readFromHost<DescribedModel[]>(holder(), "/api/models");
    const answering = models.filter(({ state }) => state === "answering");
    expect(answering).toMatchObject([{ isHere: true }]);
    expect(answering[0]?.done).toBe(answering[0]?.of);
    expect(answering[0]?.of).toBeGreaterThan(0);
  });

  it("are re-embedded for its operator, which changes nothing when all is there", async () => {
    type Line = {
      readonly progress?: { readonly done: number; readonly of: number };
      readonly result?: Reembedded;
    };
    const lines: Line[] = [];
    for await (const line of askHost<Line>(holder(), "/api/models", { leaveOut: false, removeOld: false }))
      lines.push(line);
    const of = lines[0]?.progress?.of ?? 0;
    expect(lines[0]).toMatchObject({ progress: { done: of } });
    expect(lines.at(-1)).toMatchObject({
      result: { done: of, of, answers: true, switched: false, removed: [] },
    });
  });

  it.each(["GET", "POST"])("are nobody else's business: %s", async (method) => {
    for (const authorization of ["", "Bearer ", "Bearer guessed"]) {
      const answer = await fetch(`${address}/api/models`, { method, headers: { authorization } });
      expect(answer.status).toBe(404);
      expect(await answer.text()).toBe("");
    }
  });

  it("are asked for in a form that is checked", async () => {
    const asked = (async () => {
      for await (const _ of askHost(holder(), "/api/models", { leaveOut: "yes" }));
    })();
    await expect(asked).rejects.toThrow(/answered 422: .*leaveOut/);
  });
});
