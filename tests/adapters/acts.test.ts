import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { HIDDEN } from "#core/entries/hidden-texts";
import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import type { Result } from "#core/result";
import { answerVote } from "#usecases/answer-vote";
import { appealDecision } from "#usecases/appeal-decision";
import { castVote } from "#usecases/cast-vote";
import { challengeEntry } from "#usecases/challenge-entry";
import { closeReviews } from "#usecases/close-reviews";
import { decideChallenge } from "#usecases/decide-challenge";
import { hideContent } from "#usecases/hide-content";
import { lockEntry } from "#usecases/lock-entry";
import { lookUpMark } from "#usecases/look-up-mark";
import { mergeEntries } from "#usecases/merge-entries";
import { submitRevision } from "#usecases/submit-revision";
import { undoAct } from "#usecases/undo-act";
import { verifyTrails } from "#usecases/verify-trails";
import { voteOnAppeal } from "#usecases/vote-on-appeal";
import { withdrawSubmission } from "#usecases/withdraw-submission";
import { contentNamed, keptPhotograph } from "../setup/contributed-entry.ts";
import { describeOnBothDatabases } from "../setup/databases.ts";
import { memberNamed, moderatorNamed, reviewerNamed } from "../setup/review-members.ts";
import { drawMark, wireScratch } from "../setup/scratch-reference.ts";

const REASON = "The strokes stand as on the plate that I have here, and the frame is of the same make.";
const HOUR = 3_600_000;

describeOnBothDatabases("what members do to entries", (database) => {
  let wired: Awaited<ReturnType<typeof wireScratch>>;
  const author = memberNamed("Ansa Hollin");
  const reviewers = ["Ada", "Ben", "Cleo"].map((name) => reviewerNamed(name));
  const moderators = ["Mira", "Nils", "Olga", "Per"].map(moderatorNamed);
  const [mira, nils, olga, per] = moderators as [ActingMember, ActingMember, ActingMember, ActingMember];
  /** Time that the clock is ahead, so that nobody waits three days. */
  let passed = 0;
  beforeAll(async () => {
    const scratch = await wireScratch(database());
    wired = { ...scratch, clock: { now: () => new Date(Date.now() + passed) } };
  });
  afterAll(() => wired.end());

  const submit = async (
    title: string,
    revised: { entry: string; parents: readonly string[] } | null = null,
    by = author,
  ) => {
    const photographs = [await keptPhotograph(wired, 1), await keptPhotograph(wired, 2)];
    const { entry = null, parents = [] } = revised ?? {};
    const content = contentNamed(title);
    return submitRevision(wired, by, { entry, content, photographs, parents, summary: "", coAuthors: [] });
  };
  const made = async (title: string) => {
    const result = await submit(title);
    if (!result.ok) throw new Error(JSON.stringify(result.error));
    return result.value;
  };
  const history = async (slug: string) => {
    const found = await wired.trails.history(slug);
    if (!found) throw new Error(`There is no entry ${slug}.`);
    return found.history;
  };
  const supportAll = async (slug: string, revision: string) => {
    for (const by of reviewers)
      await castVote(wired, by, slug, {
        revision,
        choice: "support",
        reason: REASON,
        basis: "handled the object",
      });
    passed += 73 * HOUR;
    await closeReviews(wired);
  };
  const verified = async (title: string) => {
    const entry = await made(title);
    await supportAll(entry.slug, entry.revision);
    expect((await history(entry.slug)).verified).toBe(entry.revision);
    return entry;
  };
  const lookUp = async (slug: string) => {
    const view = await wired.entries.bySlug(slug);
    const bytes = await wired.blobs.get(view?.photographs[0]?.sha256 ?? "");
    if (!bytes) throw new Error("The entry shows no photograph.");
    return async () => {
      const region = { x: 20, y: 20, width: 180, height: 160, turn: 0 };
      const found = await lookUpMark(wired, {
        photographs: [{ bytes, region, mark: 1 }],
        ownerHash: "owner",
        days: 30,
      });
      if (!found.ok) throw new Error(found.error.rule);
      const kept = await wired.lookUps.find(found.value.id);
      const ids = kept?.matches.map(({ entry }) => entry) ?? [];
      return [...(await wired.entries.summaries(ids)).values()].map((summary) => summary.slug);
    };
  };
  const ruleOf = (result: Result<unknown, FieldError | readonly FieldError[]>) =>
    result.ok ? null : [result.error].flat().map(({ field, rule }) => `${field} ${rule}`)[0];

  it("records a new entry with its photographs, found by a look-up at once", async () => {
    const { slug, number } = await made("Anchor in an oval");
    expect([slug, number]).toEqual(["anchor-in-an-oval", 1]);
    const view = await wired.entries.bySlug(slug);
    expect(view).toMatchObject({ summary: { state: "under review", photographCount: 2 } });
    expect(await (await lookUp(slug))()).toContain(slug);
    const row = await database().prisma.revision.findFirstOrThrow({ where: { entry: { slug } } });
    expect(row).toMatchObject({ authorId: author.id, createdBy: "Ansa Hollin" });
    expect((await made("Anchor in an oval")).slug).toBe("anchor-in-an-oval-2");
  });

  it("records nothing of what lacks the minimum, or was revised meanwhile by somebody else", async () => {
    const { slug, revision } = await made("Two hands");
    const entries = await wired.entries.counts();
    const bare = { ...contentNamed("Bare"), description: "" };
    const refused = await submitRevision(wired, author, {
      entry: null,
      content: bare,
      photographs: [],
      parents: [],
      summary: "",
      coAuthors: [],
    });
    expect(ruleOf(refused)).toBe("revision minimum");
    expect(await wired.entries.counts()).toEqual(entries);
    const other = memberNamed("Bram Tiller");
    const results = await Promise.all([
      submit("Two hands clasped", { entry: slug, parents: [revision] }),
      submit("Two hands, open", { entry: slug, parents: [revision] }, other),
    ]);
    expect(results.map(ruleOf).sort()).toEqual([null, "revision revised-meanwhile"].sort());
    expect((await history(slug)).revisions.map(({ number }) => number)).toEqual([1, 2]);
    expect(ruleOf(await submit("Nowhere", { entry: "nowhere", parents: [] }))).toBe("entry entry-not-here");
  });

  it("goes on showing what is verified while a newer revision is under review", async () => {
    const { slug, revision } = await verified("Bell");
    const next = await submit("Bell with a crack", { entry: slug, parents: [revision] });
    if (!next.ok) throw new Error(JSON.stringify(next.error));
    expect((await wired.entries.bySlug(slug))?.content.title).toBe("Bell");
    await supportAll(slug, next.value.revision);
    expect((await wired.entries.bySlug(slug))?.content.title).toBe("Bell with a crack");
    expect((await wired.entries.search(query("crack"))).entries.map((each) => each.slug)).toEqual([slug]);
  });

  it("ends a review that its author withdraws, and answers a vote that opposes", async () => {
    const { slug, revision } = await made("Cup");
    const [ada] = reviewers as [ActingMember];
    const said = { revision, choice: "oppose", reason: REASON, basis: "other" } as const;
    await castVote(wired, ada, slug, said);
    const answered = { revision, voter: ada.id, answer: "The handle is a later repair." };
    expect(ruleOf(await answerVote(wired, author, slug, answered))).toBeNull();
    expect(ruleOf(await withdrawSubmission(wired, ada, slug, { revision, reason: REASON }))).toBe(
      "member submitter-only",
    );
    expect(ruleOf(await withdrawSubmission(wired, author, slug, { revision, reason: REASON }))).toBeNull();
    expect((await wired.entries.bySlug(slug))?.summary.state).toBe("not accepted");
  });

  it("takes a challenge with photographs, and what is decided and appealed follows at once", async () => {
    const { slug, revision } = await verified("Drum");
    const challenge = randomUUID();
    const given = {
      challenge,
      revision,
      claim: "wrong maker" as const,
      text: "The mark stands on a plate of another house.",
      citations: [],
      photographs: [{ bytes: await drawMark(900), credit: "Bram Tiller", licence: "CC BY 4.0" }],
    };
    const bram = memberNamed("Bram Tiller");
    const text = Buffer.from("no photograph at all");
    const bad = { ...given, photographs: [...given.photographs, { ...given.photographs[0], bytes: text }] };
    expect(ruleOf(await challengeEntry(wired, bram, slug, bad as typeof given))).toBe(
      "photograph image-type",
    );
    expect(ruleOf(await challengeEntry(wired, bram, slug, given))).toBeNull();
    const [{ evidence } = { evidence: null }] = (await history(slug)).challenges;
    const sha256 = evidence?.photographs[0]?.sha256 ?? "";
    expect(await wired.blobs.get(sha256)).not.toBeNull();
    expect(await wired.lookUps.imageInUse(sha256)).toBe(true);
    expect((await wired.entries.bySlug(slug))?.summary.state).toBe("disputed");
    const find = await lookUp(slug);
    const decision = {
      challenge,
      ruling: "upheld",
      reason: REASON,
      consequence: { kind: "withdrawn" },
    } as const;
    expect(ruleOf(await decideChallenge(wired, mira, slug, decision))).toBeNull();
    expect((await wired.entries.bySlug(slug))?.summary.state).toBe("withdrawn");
    expect(await find()).not.toContain(slug);
    expect(ruleOf(await appealDecision(wired, author, slug, { challenge, reason: REASON }))).toBeNull();
    for (const by of [nils, olga])
      expect(
        ruleOf(await voteOnAppeal(wired, by, slug, { challenge, choice: "overturn", reason: REASON })),
      ).toBeNull();
    expect((await wired.entries.bySlug(slug))?.summary.state).toBe("verified");
    expect(await find()).toContain(slug);
  });

  it("hides a photograph and a text from pages, words and look-ups, until another moderator undoes it", async () => {
    const { slug, revision } = await verified("Zephyrine");
    const before = await wired.entries.bySlug(slug);
    const photograph = before?.photographs[0];
    if (!photograph) throw new Error("The entry shows no photograph.");
    const [hidesImage, hidesTitle] = [randomUUID(), randomUUID()];
    const why = { ground: "rights" as const, reason: "The owner of the rights asks for it." };
    const find = await lookUp(slug);
    const hide = (act: string, what: Parameters<typeof hideContent>[3]["what"]) =>
      hideContent(wired, mira, slug, { act, what, ...why });
    expect(ruleOf(await hide(hidesImage, { kind: "photograph", photograph: photograph.id }))).toBeNull();
    expect(ruleOf(await hide(hidesTitle, { kind: "text", revision, field: "title" }))).toBeNull();
    expect(ruleOf(await hide(randomUUID(), { kind: "photograph", photograph: randomUUID() }))).toBe(
      "photograph content-not-here",
    );
    const hidden = await wired.entries.bySlug(slug);
    expect(hidden).toMatchObject({
      summary: { title: HIDDEN, photographCount: 1 },
      content: { title: HIDDEN },
      hidden: { photographs: 1, texts: ["title"] },
    });
    expect(hidden?.photographs.map(({ id }) => id)).not.toContain(photograph.id);
    const { id, number, contentHash } = hidden?.revision ?? {};
    expect(await wired.entries.matched([slug, "nowhere"])).toMatchObject([
      { slug, title: HIDDEN, state: "verified", revision: { id, number, contentHash } },
    ]);
    expect((await wired.revisions.shown(slug, 1))?.view.content.title).toBe(HIDDEN);
    expect((await wired.entries.search(query("zephyrine"))).total).toBe(0);
    expect(await wired.contents.isHiddenImage(photograph.sha256)).toBe(true);
    const { acts } = await history(slug);
    expect(acts.map(({ did }) => did)).toMatchObject([
      { what: { sha256: photograph.sha256 } },
      { what: { sha256: expect.stringMatching(/^[0-9a-f]{64}$/) } },
    ]);
    expect(JSON.stringify(acts)).not.toContain("Zephyrine");
    expect(ruleOf(await undoAct(wired, mira, slug, { act: hidesTitle, reason: REASON }))).toBe(
      "member own-act",
    );
    for (const act of [hidesImage, hidesTitle])
      expect(ruleOf(await undoAct(wired, nils, slug, { act, reason: REASON }))).toBeNull();
    expect(await wired.entries.bySlug(slug)).toEqual(before);
    expect((await wired.entries.search(query("zephyrine"))).total).toBe(1);
    expect(await wired.contents.isHiddenImage(photograph.sha256)).toBe(false);
    expect(await find()).toContain(slug);
  });

  it("merges a duplicate, whose address leads on; not into itself, nor round in a circle", async () => {
    const [kept, duplicate] = [await verified("Goat"), await made("Goat again")];
    const merge = (entry: string, into: string) =>
      mergeEntries(wired, per, entry, { act: randomUUID(), into, reason: REASON });
    const find = await lookUp(duplicate.slug);
    expect(ruleOf(await merge(duplicate.slug, duplicate.slug))).toBe("into into-itself");
    expect(ruleOf(await merge(duplicate.slug, "nowhere"))).toBe("into entry-not-here");
    expect(ruleOf(await merge(duplicate.slug, kept.slug))).toBeNull();
    expect(ruleOf(await merge(kept.slug, duplicate.slug))).toBe("into leads-back");
    expect(await wired.contents.standsInstead(duplicate.slug)).toBe(kept.slug);
    expect(await wired.contents.standsInstead(kept.slug)).toBeNull();
    expect(await find()).not.toContain(duplicate.slug);
    expect((await wired.entries.search(query("goat"))).entries.map(({ slug }) => slug)).toEqual([kept.slug]);
    const [act] = (await history(duplicate.slug)).acts;
    await undoAct(wired, mira, duplicate.slug, { act: act?.id ?? "", reason: REASON });
    expect(await wired.contents.standsInstead(duplicate.slug)).toBeNull();
    expect(await find()).toContain(duplicate.slug);
  });

  it("takes nothing while an entry is locked", async () => {
    const { slug, revision } = await made("Helm");
    expect(ruleOf(await lockEntry(wired, mira, slug, { act: randomUUID(), reason: REASON }))).toBeNull();
    const said = { revision, choice: "support", reason: REASON, basis: "other" } as const;
    const [ada] = reviewers as [ActingMember];
    expect(ruleOf(await castVote(wired, ada, slug, said))).toBe("entry entry-locked");
  });

  it("logs what moderators did, and every trail is whole", async () => {
    const log = await wired.reviewLists.moderation(0, 50);
    expect(log.map(({ link }) => link.type).sort()).toEqual(
      [
        ...["challenge decided", "appeal vote cast", "appeal vote cast", "content hidden", "content hidden"],
        ...["act undone", "act undone", "act undone", "merged", "locked"],
      ].sort(),
    );
    expect((await verifyTrails(wired))?.faults).toEqual([]);
    passed += 31 * 24 * HOUR;
    await closeReviews(wired);
    expect((await verifyTrails(wired))?.faults).toEqual([]);
  });
});

const query = (words: string) => ({
  words,
  kind: null,
  technique: null,
  material: null,
  maker: null,
  period: null,
  page: 1,
});
