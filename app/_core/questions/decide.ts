import type { FieldError } from "../field-error.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Answer, Proposed, Question, QuestionCommand, QuestionEvent } from "./question.ts";
import { MOST_PROPOSALS } from "./question.ts";

type Decision = Result<readonly QuestionEvent[], FieldError>;
type Standing = Exclude<Question, { state: "unasked" | "withdrawn" }>;

const nothing: Decision = ok([]);

/**
 * What follows from a command: events in the order in which they happen, none when it is so already.
 * Who may give which command is not decided here.
 */
export function decide(question: Question, command: QuestionCommand): Decision {
  if (command.type === "publish") {
    const { type: _, ...published } = command;
    return question.state === "unasked" ? ok([{ type: "published", ...published }]) : nothing;
  }
  if (question.state === "unasked")
    return fail({ field: "question", rule: "question-unknown", received: question.state });
  if (question.state === "withdrawn")
    return command.type === "withdraw"
      ? nothing
      : fail({ field: "question", rule: "question-withdrawn", received: question.title });
  switch (command.type) {
    case "propose":
      return propose(question, command);
    case "accept":
    case "take acceptance back":
    case "decline":
      return judge(question, command);
    case "make an entry":
      return makeEntry(question, command);
    case "withdraw":
      return ok([{ type: "withdrawn", at: command.at }]);
  }
}

function propose(question: Standing, { at, ...command }: { at: string } & Proposed): Decision {
  const { answer, reasons, basis, name } = command;
  const said = { answer, reasons, basis, name };
  if (question.proposals.some((proposal) => sameProposal(proposal, said))) return nothing;
  if (question.proposals.length >= MOST_PROPOSALS)
    return fail({
      field: "question",
      rule: "proposals-many",
      received: String(question.proposals.length),
      params: { most: MOST_PROPOSALS },
    });
  return ok([{ type: "proposed", at, proposal: question.proposals.length + 1, ...said }]);
}

type Judgement = Extract<QuestionCommand, { type: "accept" | "take acceptance back" | "decline" }>;

function judge(question: Standing, command: Judgement): Decision {
  const { at, proposal: number } = command;
  const proposal = question.proposals.find((each) => each.number === number);
  if (!proposal) return fail({ field: "proposal", rule: "proposal-unknown", received: String(number) });
  const accepted = question.state === "answered" ? question.accepted : null;
  const takenBack = (which: number): QuestionEvent => ({
    type: "acceptance taken back",
    at,
    proposal: which,
  });
  switch (command.type) {
    case "accept": {
      if (accepted === number) return nothing;
      const before = accepted === null ? [] : [takenBack(accepted)];
      return ok([...before, { type: "accepted", at, proposal: number }]);
    }
    case "take acceptance back":
      return accepted === number ? ok([takenBack(number)]) : nothing;
    case "decline": {
      const { reason } = command;
      const { standing } = proposal;
      if (standing.is === "declined" && standing.reason === reason) return nothing;
      const before = accepted === number ? [takenBack(number)] : [];
      return ok([...before, { type: "declined", at, proposal: number, reason }]);
    }
  }
}

function makeEntry(question: Standing, { at, entry }: { at: string; entry: string }): Decision {
  if (question.entry === entry) return nothing;
  const refused = whyNoEntry(question);
  return refused ? fail(refused) : ok([{ type: "made an entry", at, entry }]);
}

/** Why no entry can be made from a question, when it cannot; else null. */
export function whyNoEntry(question: Question): FieldError | null {
  const refuse = (rule: string, received: string): FieldError => ({ field: "question", rule, received });
  if (question.state === "unasked") return refuse("question-unknown", question.state);
  if (question.state === "withdrawn") return refuse("question-withdrawn", question.title);
  if (question.entry !== null) return refuse("entry-made-already", question.entry);
  const answer = acceptedAnswer(question);
  return answer?.kind === "entry" ? refuse("answered-by-entry", answer.entry) : null;
}

/** The answer that the asker has accepted; null while there is none. */
export function acceptedAnswer(question: Question): Answer | null {
  if (question.state !== "answered") return null;
  return question.proposals.find(({ number }) => number === question.accepted)?.answer ?? null;
}

const sameProposal = (a: Proposed, b: Proposed): boolean =>
  sameAnswer(a.answer, b.answer) && a.reasons === b.reasons && a.basis === b.basis && a.name === b.name;

function sameAnswer(a: Answer, b: Answer): boolean {
  if (a.kind === "entry") return b.kind === "entry" && a.entry === b.entry;
  return b.kind === "words" && a.maker === b.maker && a.mark === b.mark && a.period === b.period;
}
