import type { ReactNode } from "react";
import type { CommandName } from "#core/object-files/commands";
import type { KeptFile } from "#core/object-files/kept-file";
import type { Typed } from "#core/questions/typed-text";
import { type FormState, OtherErrors } from "../questions/form-field.tsx";
import { KeptForm } from "./kept-form.tsx";

/** A form of a file that was refused, as the page found it. */
export type RefusedItem = FormState | null;

/** What a form shows: what was typed when it was refused, else the item as it stands. */
export type ItemState = FormState & { readonly id: string; readonly given: boolean };

/** The form of an item that is there. */
export function stateOf(refused: RefusedItem, did: CommandName, id: string, typed: Typed): ItemState {
  const mine = refused?.typed.did === did && refused.typed.id === id;
  return mine ? { ...refused, id, given: true } : { typed, errors: [], id, given: false };
}

/** The form that adds an item: it keeps its id when it is shown again, so that it is added once. */
export function stateOfNew(
  refused: RefusedItem,
  did: CommandName,
  there: readonly { readonly id: string }[],
  fresh: string,
  typed: Typed = {},
): ItemState {
  const id = refused?.typed.id;
  const mine = refused && refused.typed.did === did && id && !there.some((each) => each.id === id);
  return mine ? { ...refused, id, given: true } : { typed, errors: [], id: fresh, given: false };
}

type ItemFormProps = {
  readonly kept: Pick<KeptFile, "id" | "version">;
  readonly command: CommandName;
  /** The part of the file on whose page it stands. */
  readonly part: string;
  readonly state: ItemState;
  /** False for a form that adds. */
  readonly isThere: boolean;
  readonly about: string;
  /** Fields that show their own errors. */
  readonly shown: readonly string[];
  readonly className?: string | undefined;
  /** A photograph may come with it. */
  readonly photographId?: string;
  readonly anchor?: string;
  readonly children: ReactNode;
};

/** A form of one item of a file, with what every such form carries. */
export function ItemForm(props: ItemFormProps) {
  const { kept, command, part, state, isThere, about, shown, className, photographId, anchor, children } =
    props;
  const page = `/objects/${kept.id}${part === "overview" ? "" : `/${part}`}`;
  const image = state.typed.sha256;
  return (
    <KeptForm
      key={`${state.id} ${kept.version}`}
      file={kept.id}
      action={`/api/objects/${kept.id}/${command}`}
      name={`${command} ${isThere ? state.id : "new"}`}
      about={about}
      done={`${page}?said=saved${anchor ? `#${anchor}` : ""}`}
      given={state.given}
      className={className}
    >
      <OtherErrors form={state} shown={shown} />
      <input type="hidden" name="id" value={state.id} />
      <input type="hidden" name="version" value={kept.version} />
      <input type="hidden" name="page" value={page} />
      <input type="hidden" name="done" value={page} />
      {photographId && (
        <input type="hidden" name="photographId" value={state.typed.photographId || photographId} />
      )}
      {image && state.given && <input type="hidden" name="sha256" value={image} />}
      {children}
    </KeptForm>
  );
}
