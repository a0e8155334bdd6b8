import Link from "next/link";
import { useTranslations } from "next-intl";
import type { ReactNode } from "react";
import type { By, Claim, EntryEvent } from "#core/review/entry-event";

type HappenedProps = {
  readonly event: EntryEvent;
  readonly slug: string;
  /** Of a revision by its id. */
  readonly numberOf: (revision: string) => number;
  /** Of a voter by their id. */
  readonly nameOf: (voter: string) => string;
  readonly claimOf: (challenge: string) => Claim | null;
};

/** One event of a trail as a sentence. */
export function Happened({ event, slug, numberOf, nameOf, claimOf }: HappenedProps) {
  const t = useTranslations("trail");
  const claims = useTranslations("challenge.claims");
  const who = () => <Who by={event.by} />;
  const challenge = (id: string) => (words: ReactNode) => (
    <Link href={`/entries/${slug}/challenges/${id}`}>{words}</Link>
  );
  const claim = (id: string) => {
    const found = claimOf(id);
    return found === null ? "" : claims(found);
  };
  switch (event.type) {
    case "revision recorded":
      return t.rich("recorded", { who, number: event.revision.number });
    case "submitted":
      return t.rich("submitted", {
        who,
        number: numberOf(event.revision),
        link: (words) => <Link href={`/entries/${slug}/review`}>{words}</Link>,
      });
    case "vote cast":
      return t.rich(`voted.${event.choice}`, { who, number: numberOf(event.revision) });
    case "vote answered":
      return t.rich("answered", { who, name: nameOf(event.voter) });
    case "submission withdrawn":
      return t.rich("withdrawn", { who, number: numberOf(event.revision) });
    case "review closed": {
      const { support, oppose, abstain } = event.tally;
      const number = numberOf(event.revision);
      return t(`closed.${event.outcome}`, { number, support, oppose, abstain });
    }
    case "challenged":
      return t.rich("challenged", {
        who,
        number: numberOf(event.revision),
        claim: claims(event.claim),
        link: challenge(event.challenge),
      });
    case "challenge decided":
      return t.rich(`decided.${event.ruling}`, {
        who,
        claim: claim(event.challenge),
        link: challenge(event.challenge),
        consequence: t(`consequence.${event.consequence.kind}`),
      });
    case "appealed":
      return t.rich("appealed", { who, link: challenge(event.challenge) });
    case "appeal vote cast":
      return t.rich(`appealVote.${event.choice}`, { who });
    case "appeal decided":
      return t.rich(`appealDecided.${event.outcome}`, { link: challenge(event.challenge) });
    case "content hidden":
      return t.rich(`hidden.${event.what.kind}`, {
        who,
        ground: t(`grounds.${event.ground}`),
        hash: event.what.sha256,
      });
    case "merged":
      return t.rich("merged", {
        who,
        into: () => <Link href={`/entries/${event.into}`}>{event.into}</Link>,
      });
    case "locked":
      return t.rich("locked", { who });
    case "act undone":
      return t.rich("undone", { who });
  }
}

/** What somebody wrote with an event; null when nothing. */
export function wordsOf(event: EntryEvent): string | null {
  switch (event.type) {
    case "vote answered":
      return event.answer;
    case "challenged":
      return event.evidence.text;
    default:
      return "reason" in event && event.reason !== "" ? event.reason : null;
  }
}

/** Who did it: a member with a page, or the program, or an import. */
export function Who({ by }: { readonly by: By }) {
  return by.id === null ? by.name : <Link href={`/members/${by.id}`}>{by.name}</Link>;
}
