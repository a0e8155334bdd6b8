import { useEffect, useRef, useState } from "react";
import type { FramedBy } from "#core/look-ups/asked-photographs";
import { framed } from "#core/photographs/proposal";
import type { Region } from "#core/photographs/region";
import { askForRegions, type Places } from "./ask-for-regions.ts";
import type { Chosen } from "./use-chosen-photographs.ts";

export type PlacesState = {
  /** Is it still being looked for? */
  readonly looking: boolean;
  /** How many places were found. */
  readonly count: number;
  /** Is the first place likelier right than wrong? */
  readonly confident: boolean;
  /** Which place is framed now, from 0; null when the frame is another. */
  readonly shown: number | null;
  /** Frames the next place, after the last the first. */
  readonly next: () => void;
};

/**
 * Looks for the mark in the photograph on the bench. A place that is likely right is framed by itself, unless the
 * person was quicker.
 */
export function usePlaces(
  chosen: Chosen | null,
  setRegion: (region: Region, framedBy: FramedBy) => void,
): PlacesState {
  const [places, setPlaces] = useState<Places | null>(null);
  const [looking, setLooking] = useState(false);
  const [placed, setPlaced] = useState<{ readonly index: number; readonly region: Region } | null>(null);
  const now = useRef(chosen);
  now.current = chosen;
  const url = chosen?.size ? chosen.src : null;

  function place(found: Places, index: number) {
    const proposal = found.proposals[index];
    const size = now.current?.size;
    if (!proposal || !size) return;
    const region = framed(proposal.region, size);
    setPlaced({ index, region });
    setRegion(region, index === 0 ? "proposal" : "person");
  }

  // Once for each photograph, not for each change of its frame.
  useEffect(() => {
    setPlaces(null);
    setPlaced(null);
    const size = now.current?.size;
    if (!url || !size) return;
    const asking = new AbortController();
    setLooking(true);
    askForRegions(url, size, asking.signal).then((found) => {
      if (asking.signal.aborted) return;
      setLooking(false);
      setPlaces(found);
      if (found?.confident && now.current?.framedBy === "nobody") place(found, 0);
    });
    return () => {
      asking.abort();
      setLooking(false);
    };
  }, [url]);

  const shown = placed && chosen?.region === placed.region ? placed.index : null;
  const count = places?.proposals.length ?? 0;
  return {
    looking,
    count,
    confident: places?.confident ?? false,
    shown,
    next: () => {
      if (places && count > 0) place(places, placed ? (placed.index + 1) % count : 0);
    },
  };
}
