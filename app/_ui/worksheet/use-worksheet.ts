import { useRef, useState } from "react";
import { type WorksheetState, withoutPieceAt, withPiece } from "#core/dating/answer-worksheet-form";
import type { Piece } from "#core/dating/piece";
import { type EvidenceForm, formOf, readEvidenceForm } from "#core/dating/read-evidence-form";
import { type AddressParams, readWorksheet } from "#core/dating/read-worksheet";
import { addressOf, type Worksheet } from "#core/dating/worksheet";

const EMPTY_FORM: EvidenceForm = {};

/** The worksheet while it is worked on with scripts: what the plain form does, without going anywhere. */
export function useWorksheet(initial: WorksheetState) {
  const [state, setState] = useState(initial);
  /** Counts what is begun anew, so that the fields of the form are. */
  const [round, setRound] = useState(0);
  const [removed, setRemoved] = useState<{ readonly piece: Piece; readonly place: number } | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);

  const show = (worksheet: Worksheet, form: EvidenceForm = EMPTY_FORM, editing: number | null = null) => {
    window.history.replaceState(null, "", addressOf(worksheet));
    setState({ worksheet, form, editing, shown: "", errors: [] });
    setRound((count) => count + 1);
  };
  return {
    state,
    round,
    removed,
    heading,
    type: (form: EvidenceForm) =>
      setState((before) => ({ ...before, form, shown: form.when ?? "", errors: [] })),
    add: (form: EvidenceForm) => {
      const read = readEvidenceForm(form);
      const next = read.piece && withPiece(state.worksheet, read.piece, state.editing);
      if (next?.ok) {
        setRemoved(null);
        show(next.value);
        heading.current?.focus();
        return;
      }
      setState((before) => ({ ...before, form, errors: next ? [next.error] : read.errors }));
    },
    edit: (place: number) => {
      const piece = state.worksheet.pieces[place - 1];
      if (piece) show(state.worksheet, formOf(piece), place);
      requestAnimationFrame(() => document.getElementById("when")?.focus());
    },
    cancel: () => show(state.worksheet),
    remove: (place: number) => {
      const piece = state.worksheet.pieces[place - 1];
      setRemoved(piece ? { piece, place } : null);
      show(withoutPieceAt(state.worksheet, place));
      heading.current?.focus();
    },
    putBack: () => {
      if (!removed) return;
      const { pieces } = state.worksheet;
      const at = removed.place - 1;
      show({ ...state.worksheet, pieces: [...pieces.slice(0, at), removed.piece, ...pieces.slice(at)] });
      setRemoved(null);
    },
    takeHead: (params: AddressParams) => {
      const { worksheet, errors } = readWorksheet({ ...params, e: [] });
      if (errors.length > 0) setState((before) => ({ ...before, errors }));
      else show({ ...worksheet, pieces: state.worksheet.pieces });
    },
  };
}
