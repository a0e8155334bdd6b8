import { useTranslations } from "next-intl";
import type { EntryState } from "#core/entries/vocabulary";
import { StateDrawing } from "./state-drawing.tsx";

/** Where an entry stands: a word with a small drawn sign. */
export function StateSign({ state }: { readonly state: EntryState }) {
  const t = useTranslations("states");
  return <StateDrawing word={t(state)}>{drawing(state)}</StateDrawing>;
}

function drawing(state: EntryState) {
  switch (state) {
    case "draft":
      return <circle cx="8" cy="8" r="6.3" strokeDasharray="2 2" />;
    case "under review":
      return (
        <>
          <circle cx="8" cy="8" r="6.3" />
          <path d="M8 1.700a6.300 6.300 0 0 1 0 12.600z" fill="currentColor" stroke="none" />
        </>
      );
    case "verified":
      return (
        <>
          <circle cx="8" cy="8" r="6.3" fill="currentColor" />
          <path d="m5 8.300 2.200 2.200 4-4.700" stroke="var(--paper)" strokeWidth="1.7" />
        </>
      );
    case "disputed":
      return <path d="M1.500 5.500h9m-3-3 3 3-3 3M14.500 10.500h-9m3-3-3 3 3 3" />;
    case "not accepted":
      return (
        <>
          <circle cx="8" cy="8" r="6.3" />
          <path d="M4.500 8h7" />
        </>
      );
    case "superseded":
      return (
        <>
          <circle cx="6" cy="6" r="4.300" strokeDasharray="2 1.500" />
          <circle cx="10" cy="10" r="4.800" />
        </>
      );
    case "withdrawn":
      return (
        <>
          <circle cx="8" cy="8" r="6.3" />
          <path d="m5.500 5.500 5 5m0-5-5 5" />
        </>
      );
  }
}
