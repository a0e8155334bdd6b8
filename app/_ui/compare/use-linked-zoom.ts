import { useRef } from "react";
import type { ReactZoomPanPinchRef } from "react-zoom-pan-pinch";

export type Side = "reference" | "query";
type View = { readonly scale: number; readonly positionX: number; readonly positionY: number };

export type LinkedZoom = {
  readonly attach: (side: Side, pane: ReactZoomPanPinchRef | null) => void;
  readonly moved: (side: Side, view: View) => void;
  readonly nearer: () => void;
  readonly farther: () => void;
  readonly whole: () => void;
};

/** Keeps two panes at the same place and nearness: what moves one moves the other. */
export function useLinkedZoom(): LinkedZoom {
  const panes = useRef<Partial<Record<Side, ReactZoomPanPinchRef | null>>>({});
  const other = (side: Side): Side => (side === "query" ? "reference" : "query");
  const step = (factor: number) => {
    const pane = panes.current.reference;
    const box = pane?.instance.wrapperComponent?.getBoundingClientRect();
    if (pane && box)
      pane.zoomToPoint(pane.state.scale * factor, box.x + box.width / 2, box.y + box.height / 2, 0);
  };
  return {
    attach(side, pane) {
      panes.current[side] = pane;
    },
    moved(side, view) {
      const pane = panes.current[other(side)];
      if (pane && !sameView(pane.state, view))
        pane.setTransform(view.positionX, view.positionY, view.scale, 0);
    },
    nearer: () => step(1.5),
    farther: () => step(1 / 1.5),
    whole: () => void panes.current.reference?.resetTransform(0),
  };
}

function sameView(a: View, b: View): boolean {
  const near = (x: number, y: number) => Math.abs(x - y) < 0.01;
  return near(a.scale, b.scale) && near(a.positionX, b.positionX) && near(a.positionY, b.positionY);
}
