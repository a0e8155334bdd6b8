import type { Proposal, Question, QuestionEvent, Standing } from "./question.ts";

export const UNASKED: Question = { state: "unasked" };

/** The question that a list of events amounts to, oldest first. */
export const questionOf = (events: readonly QuestionEvent[]): Question => events.reduce(evolve, UNASKED);

/** The question after one more event; an event that cannot follow leaves it as it is. */
export function evolve(question: Question, event: QuestionEvent): Question {
  if (event.type === "published") {
    if (question.state !== "unasked") return question;
    const { title, text, name, at } = event;
    return { state: "open", title, text, name, at, proposals: [], entry: null };
  }
  if (question.state === "unasked" || question.state === "withdrawn") return question;
  switch (event.type) {
    case "proposed": {
      const { proposal: number, answer, reasons, basis, name, at } = event;
      const proposal: Proposal = { number, answer, reasons, basis, name, at, standing: { is: "waiting" } };
      return { ...question, proposals: [...question.proposals, proposal] };
    }
    case "accepted":
      return {
        ...question,
        state: "answered",
        accepted: event.proposal,
        proposals: taken(question.proposals, event.proposal, { is: "accepted" }),
      };
    case "acceptance taken back": {
      const { title, text, name, at, entry } = question;
      const proposals = taken(question.proposals, event.proposal, { is: "waiting" });
      return { state: "open", title, text, name, at, entry, proposals };
    }
    case "declined":
      return {
        ...question,
        proposals: taken(question.proposals, event.proposal, { is: "declined", reason: event.reason }),
      };
    case "made an entry":
      return { ...question, entry: event.entry };
    case "withdrawn": {
      const { title, text, name, at, entry, proposals } = question;
      return { state: "withdrawn", title, text, name, at, entry, proposals };
    }
  }
}

function taken(proposals: readonly Proposal[], number: number, standing: Standing): readonly Proposal[] {
  return proposals.map((proposal) => (proposal.number === number ? { ...proposal, standing } : proposal));
}
