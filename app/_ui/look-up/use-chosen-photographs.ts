import { useEffect, useRef, useState } from "react";
import {
  type AskedPhotograph,
  type FramedBy,
  MOST_PHOTOGRAPHS,
  numberMarks,
} from "#core/look-ups/asked-photographs";
import { type Region, wholeOf } from "#core/photographs/region";
import { imageAtLeast } from "../image-address.ts";
import type { Size } from "./crop-geometry.ts";

export type Chosen = {
  /** Tells it apart from the others; also where the browser shows it from. */
  readonly src: string;
  /** The file itself, or the SHA-256 of one that was looked up before. */
  readonly sent: File | string;
  readonly name: string;
  /** Upright size, once the browser has read it; null before, or when it cannot. */
  readonly size: Size | null;
  readonly region: Region | null;
  /** Who set the region: nobody, and then it is all of the photograph, the place found for it, or the person. */
  readonly framedBy: FramedBy;
  /** Which mark of the object it shows, from 1. */
  readonly mark: number;
  /** The browser cannot show this kind of file; the reference may still read it, whole. */
  readonly unreadable: boolean;
};

type OnTheBench = { readonly all: readonly Chosen[]; readonly at: number };

/**
 * The photographs on the bench with their marks, and the one that is being cropped.
 * @param looked photographs that were looked up before, to begin with
 */
export function useChosenPhotographs(looked: readonly AskedPhotograph[]) {
  const [{ all, at }, set] = useState<OnTheBench>(() => ({ all: looked.map(fromLookedUp), at: 0 }));
  const opened = useRef(new Set<string>());
  useEffect(() => {
    const addresses = opened.current;
    return () => {
      for (const address of addresses) URL.revokeObjectURL(address);
      addresses.clear();
    };
  }, []);

  const change = (src: string, found: Partial<Chosen>) =>
    set((now) => ({
      ...now,
      all: numberMarks(now.all.map((each) => (each.src === src ? { ...each, ...found } : each))),
    }));

  /** Lays files beside those that are there and shows the first of them; what is one too many is left out. */
  function add(files: readonly File[], mark: number) {
    const added = files.slice(0, MOST_PHOTOGRAPHS - all.length).map((file) => open(file, mark));
    if (added.length === 0) return;
    set((now) => ({ all: numberMarks([...now.all, ...added]), at: now.all.length }));
  }

  function open(file: File, mark: number): Chosen {
    const src = URL.createObjectURL(file);
    opened.current.add(src);
    const image = new Image();
    image.onload = () => {
      const size = { width: image.naturalWidth, height: image.naturalHeight };
      change(src, { size, region: wholeOf(size) });
    };
    image.onerror = () => change(src, { unreadable: true });
    image.src = src;
    return {
      src,
      sent: file,
      name: file.name,
      size: null,
      region: null,
      framedBy: "nobody",
      mark,
      unreadable: false,
    };
  }

  function remove(src: string) {
    if (opened.current.delete(src)) URL.revokeObjectURL(src);
    set((now) => {
      const place = now.all.findIndex((each) => each.src === src);
      const left = now.all.filter((each) => each.src !== src);
      const next = now.at > place ? now.at - 1 : now.at;
      return { all: numberMarks(left), at: Math.max(0, Math.min(next, left.length - 1)) };
    });
  }

  const chosen = all[at] ?? null;
  return {
    all,
    at,
    chosen,
    add,
    remove,
    show: (place: number) => set((now) => ({ ...now, at: place })),
    drop: () => set({ all: [], at: 0 }),
    setRegion: (region: Region, framedBy: FramedBy = "person") =>
      chosen && change(chosen.src, { region, framedBy }),
    setMark: (mark: number) => chosen && change(chosen.src, { mark }),
  };
}

function fromLookedUp(image: AskedPhotograph): Chosen {
  const { sha256, width, height, region, mark } = image;
  const src = imageAtLeast(image, 1280);
  return {
    src,
    sent: sha256,
    name: "",
    size: { width, height },
    region,
    framedBy: "person",
    mark,
    unreadable: false,
  };
}
