import { useTranslations } from "next-intl";
import type { LookUpView } from "#core/look-ups/look-up";
import type { KeptFile } from "#core/object-files/kept-file";
import type { MatchedEntry } from "#core/object-files/matched-entry";
import type { MarkFound } from "#core/object-files/object-file";
import { How } from "../entry-line.tsx";
import plain from "../plain.module.css";
import forms from "../questions/form.module.css";
import { AcceptedMatch } from "./accepted-match.tsx";
import { type ByWords, ChooseEntry } from "./choose-entry.tsx";
import type { ItemState } from "./item-form.tsx";
import { ItemPhotographs } from "./item-photographs.tsx";
import { MarkForm } from "./mark-form.tsx";
import { MarkMatches } from "./mark-matches.tsx";
import { More } from "./more.tsx";
import { RemoveItem } from "./remove-item.tsx";

type MarkItemProps = {
  readonly kept: KeptFile;
  readonly mark: MarkFound;
  readonly entries: readonly MatchedEntry[];
  readonly mayChange: boolean;
  readonly state: ItemState;
  readonly photographId: string;
  /** A look-up of this mark that was just made. */
  readonly found: LookUpView | null;
  /** What was just looked for by words for this mark. */
  readonly byWords: ByWords | null;
};

/** One mark of the object: its photographs, what it says, what it was found to be, and the way to look it up. */
export function MarkItem(props: MarkItemProps) {
  const { kept, mark, entries, mayChange, state, photographId, found, byWords } = props;
  const t = useTranslations("objectPages");
  const photographs = kept.content.photographs.filter((each) => each.of === "mark" && each.item === mark.id);
  const name = mark.words || mark.description || t("aMark");
  return (
    <>
      <h2>{name}</h2>
      <p>
        <How entry={{ kind: mark.kind, technique: mark.technique, material: "" }} />
        {mark.place && <>. {t("onPlace", { place: mark.place })}</>}. {t(`belongings.${mark.belongs}`)}.
      </p>
      {mark.words && mark.description && <p>{mark.description}</p>}
      <ItemPhotographs {...{ kept, photographs, mayChange }} alt={name} part="marks" />
      <AcceptedMatch
        kept={kept}
        mark={mark}
        today={entries.find(({ slug }) => slug === mark.match?.entry)}
        mayChange={mayChange}
      />
      {found && mayChange && <MarkMatches kept={kept} mark={mark.id} view={found} />}
      {mayChange && (
        <>
          <div className={forms.buttons}>
            <form method="post" action={`/api/objects/${kept.id}/look-up`} encType="multipart/form-data">
              <input type="hidden" name="mark" value={mark.id} />
              <button type="submit" className={mark.match ? plain.quiet : plain.button}>
                {t(mark.match ? "match.lookUpAgain" : "match.lookUp")}
              </button>
            </form>
          </div>
          <ChooseEntry kept={kept} mark={mark.id} byWords={byWords} />
          <More words={t("changeMark")} isOpen={state.given}>
            <MarkForm {...{ kept, state, photographId }} isThere />
          </More>
          <RemoveItem kept={kept} list="marks" id={mark.id} part="marks" about={name} />
        </>
      )}
    </>
  );
}
