import type { ReactNode } from "react";
import type { EntryView } from "#core/entries/entry";
import { Viewer } from "../viewer/viewer.tsx";
import { EntryAgainst } from "./entry-against.tsx";
import styles from "./entry-body.module.css";
import { EntryHead } from "./entry-head.tsx";
import { EntryRelations } from "./entry-relations.tsx";
import { EntrySays } from "./entry-says.tsx";
import { EntryState } from "./entry-state.tsx";
import { EntryWhat } from "./entry-what.tsx";
import { EntryWhy } from "./entry-why.tsx";

type EntryBodyProps = {
  readonly view: EntryView;
  /** Stands with the state: the votes, and what can be done. */
  readonly review?: ReactNode;
  /** Stands after who says so. */
  readonly after?: ReactNode;
  /** A draft has nobody yet who says so. */
  readonly isDraft?: boolean;
};

/** An entry by one of its revisions: what is it, how sure, why, what speaks against it, who says so. */
export function EntryBody({ view, review, after, isDraft = false }: EntryBodyProps) {
  return (
    <article className={styles.entry}>
      <EntryHead view={view} />
      <div className={styles.photographs}>
        <Viewer title={view.content.title} photographs={view.photographs} />
      </div>
      <div className={styles.says}>
        <EntryWhat view={view} />
        <div className={styles.sure}>
          <EntryState view={view} />
          {review}
        </div>
        <EntryWhy view={view} />
        <EntryAgainst view={view} />
        {!isDraft && <EntrySays view={view} />}
        {after}
      </div>
      <EntryRelations view={view} />
    </article>
  );
}
