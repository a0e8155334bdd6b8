import type { EntryEvent } from "#core/review/entry-event";
import { historyOf } from "#core/review/evolve";
import { findRevision } from "#core/review/find-in-history";
import { eventOf } from "#core/trail/chain";
import type { Link } from "#core/trail/link";
import { Happened, wordsOf } from "./happened.tsx";
import styles from "./trail.module.css";
import { When } from "./when.tsx";

/** A trail in sentences, oldest first: who did what and when, in which words, and the hash that seals it. */
export function TrailStory({ slug, links }: { readonly slug: string; readonly links: readonly Link[] }) {
  const events = links.map((link) => eventOf<EntryEvent>(link));
  const history = historyOf(events);
  const numberOf = (revision: string) => findRevision(history, revision)?.number ?? 0;
  const nameOf = (voter: string) =>
    history.reviews.flatMap(({ votes }) => votes).find((vote) => vote.voter.id === voter)?.voter.name ?? "";
  const claimOf = (challenge: string) => history.challenges.find(({ id }) => id === challenge)?.claim ?? null;
  return (
    <ol className={styles.story}>
      {events.map((event, i) => {
        const words = wordsOf(event);
        return (
          <li key={links[i]?.hash}>
            <span className={styles.when}>
              <When at={event.at} />
            </span>
            <div className={styles.happened}>
              <p>
                <Happened event={event} slug={slug} numberOf={numberOf} nameOf={nameOf} claimOf={claimOf} />
              </p>
              {words && <p className={styles.words}>{words}</p>}
              <span className={styles.hash}>{links[i]?.hash.slice(0, 16)}</span>
            </div>
          </li>
        );
      })}
    </ol>
  );
}
