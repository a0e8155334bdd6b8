import { useEffect, useState } from "react";
import { type Region, wholeOf } from "#core/photographs/region";
import type { Size } from "./crop-geometry.ts";

export type Chosen = {
  readonly file: File;
  readonly url: string;
  /** Upright size, once the browser has read it; null before, or when it cannot. */
  readonly size: Size | null;
  readonly region: Region | null;
  /** Was the region set since the photograph was chosen? Else it is all of it because nobody has looked yet. */
  readonly isFramed: boolean;
  /** The browser cannot show this kind of file; the reference may still read it, whole. */
  readonly unreadable: boolean;
};

/** The photograph on the bench and the region marked on it. */
export function useChosenPhotograph() {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const url = chosen?.url;
  useEffect(() => () => void (url && URL.revokeObjectURL(url)), [url]);

  function choose(file: File) {
    const address = URL.createObjectURL(file);
    const image = new Image();
    const settle = (found: Partial<Chosen>) =>
      setChosen((now) => (now?.url === address ? { ...now, ...found } : now));
    image.onload = () => {
      const size = { width: image.naturalWidth, height: image.naturalHeight };
      settle({ size, region: wholeOf(size) });
    };
    image.onerror = () => settle({ unreadable: true });
    setChosen({ file, url: address, size: null, region: null, isFramed: false, unreadable: false });
    image.src = address;
  }

  return {
    chosen,
    choose,
    drop: () => setChosen(null),
    setRegion: (region: Region) => setChosen((now) => now && { ...now, region, isFramed: true }),
  };
}
