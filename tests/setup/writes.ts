import { STANDING_ACTS } from "#core/members/parse-standing";
import { COMMANDS } from "#core/object-files/commands";
import type { Action } from "#core/permissions";
import { ENTRY_ACTS, type EntryAct } from "#core/review/parse-acts";

type Fields = Readonly<Record<string, string>>;

/** What lets somebody into an object file, or shuts them out. */
const OPENINGS = ["invite", "end-invitation", "share", "revoke", "publish", "end-publication"];

/** A write over HTTP, with a form that is answered alike to everybody who may send it. */
export type Write = {
  /** What of `app/_core/permissions.ts` it needs; `anybody` and `operator` stand outside that table. */
  readonly needs: Action | "anybody" | "operator";
  /** Folder of its route in app/api. */
  readonly route: string;
  /** Its address, where the route's has a part that stands for something. */
  readonly path?: string;
  readonly fields?: Fields;
  /** What whoever may do it is answered with: `done`, or the rule that refuses it to anybody. */
  readonly answer: string;
};

/** What the writes are tried on; `draft` is each member's own. */
type Things = { readonly slug: string; readonly revision: string; readonly draft: string };

const REASON = "It is tried here whether the role allows it, and whether nothing else does.";

/** Every write that the app offers; those of one route together. */
export function writesOn({ slug, revision, draft }: Things): readonly Write[] {
  const account = "account/[act]";
  const drafts = "drafts/[id]";
  const ofEntry: Readonly<Record<EntryAct, readonly [Action, Fields, string]>> = {
    vote: ["vote", { revision, choice: "abstain", basis: "other" }, "done"],
    answer: ["answer a vote", { revision, voter: "nobody", answer: REASON }, "vote-unknown"],
    withdraw: ["withdraw a submission", { revision: "none" }, "not-under-review"],
    challenge: ["challenge", { revision: "none", claim: "duplicate", evidence: REASON }, "verified-only"],
    decide: [
      "decide a challenge",
      { challenge: "none", ruling: "dismissed", consequence: "no change" },
      "challenge-unknown",
    ],
    appeal: ["appeal", { challenge: "none" }, "challenge-unknown"],
    "appeal-vote": ["vote on an appeal", { challenge: "none", choice: "overturn" }, "challenge-unknown"],
    hide: ["hide content", { what: "photograph", photograph: "none", ground: "rights" }, "content-not-here"],
    merge: ["merge entries", { into: "no-such-entry" }, "entry-not-here"],
    lock: ["lock an entry", { reason: "Short." }, "text-shortest"],
    undo: ["undo an act", { act: "none" }, "act-unknown"],
  };
  const ofMember: Readonly<Record<(typeof STANDING_ACTS)[number], Action>> = {
    reviewer: "appoint a reviewer",
    moderator: "appoint a moderator",
    suspend: "suspend a member",
    restore: "suspend a member",
  };
  const mine = (action: Action, route: string, answer: string, fields: Fields = {}): Write => ({
    needs: action,
    route,
    path: route.replace("[id]", draft),
    fields: { version: "1", ...fields },
    answer,
  });
  const open = (
    needs: Write["needs"],
    route: string,
    path: string,
    answer: string,
    fields?: Fields,
  ): Write => ({
    needs,
    route,
    path,
    answer,
    ...(fields ? { fields } : {}),
  });
  const question = "questions/no-such-question";
  return [
    open("look up", "look-ups", "look-ups", "image-missing"),
    open("look up", "regions", "regions", "image-missing"),
    open("look up", "letters", "letters", "image-missing"),
    ...["keep", "let-go", "delete"].map((act) =>
      open("look up", "look-ups/[id]/[act]", `look-ups/none/${act}`, "look-up-unknown"),
    ),
    open("ask a question", "look-ups/[id]/publish", "look-ups/none/publish", "required"),
    open("ask a question", "questions/[id]/[act]", `${question}/propose`, "mark-or-maker"),
    ...["accept", "take-back", "decline", "withdraw"].map((act) =>
      open("ask a question", "questions/[id]/[act]", `${question}/${act}`, "question-unknown", {
        reason: REASON,
      }),
    ),
    open("ask a question", "questions/[id]/enter", `${question}/enter`, "required"),
    open("change one's account", account, "account/profile", "required"),
    open("change one's account", account, "account/password", "demo-account", { new_password: REASON }),
    open("change one's account", account, "account/end-session", "done", { session: "none" }),
    open("change one's account", account, "account/sign-out-elsewhere", "done"),
    open("declare an interest", "interests/[act]", "interests/declare", "required"),
    open("declare an interest", "interests/[act]", "interests/end", "interest-unknown", { interest: "none" }),
    open("write a draft", "drafts", "drafts", "revision-unknown", { entry: "no-such-entry", from: "1" }),
    mine("write a draft", `${drafts}/photographs`, "image-missing"),
    mine("write a draft", drafts, "done", { act: "save", title: "Tried" }),
    mine("submit a revision", drafts, "photograph-needed", { version: "2", act: "submit" }),
    mine("write a draft", `${drafts}/settle`, "led on", { version: "3", with: "revision" }),
    mine("write a draft", `${drafts}/discard`, "done"),
    open("keep an object file", "objects", "objects", "required"),
    open("keep an object file", "objects/take", "objects/take", "worksheet-empty"),
    ...[...COMMANDS, "look-up", "restore", ...OPENINGS].map((act) =>
      open("keep an object file", "objects/[id]/[command]", `objects/none/${act}`, "object-file-unknown", {
        mark: "none",
      }),
    ),
    ...ENTRY_ACTS.map((act): Write => {
      const [needs, fields, answer] = ofEntry[act];
      const path = `entries/${slug}/${act}`;
      return { needs, route: "entries/[slug]/[act]", path, fields: { reason: REASON, ...fields }, answer };
    }),
    ...STANDING_ACTS.map((act): Write => {
      const fields = { reason: REASON };
      return open(ofMember[act], "members/[id]/[act]", `members/nobody/${act}`, "member-unknown", fields);
    }),
    open("anybody", "join", "join", "required"),
    open("anybody", "sign-in/[way]", "sign-in/password", "required"),
    open("anybody", "sign-in/[way]", "sign-in/demo", "member-unknown", { member: "nobody" }),
    ...["appoint", "import", "models", "trails"].map((route) => open("operator", route, route, "never")),
    // The last of all: whoever does it is signed out.
    open("anybody", "sign-out", "sign-out", "done"),
  ];
}
