"use client";

import type { ReactNode } from "react";
import { TransformComponent, TransformWrapper } from "react-zoom-pan-pinch";
import { ZOOM } from "../viewer/zoom-settings.ts";
import styles from "./compare.module.css";
import type { LinkedZoom, Side } from "./use-linked-zoom.ts";

type LinkedPaneProps = {
  readonly zoom: LinkedZoom;
  readonly side: Side;
  readonly label: string;
  readonly focusable: boolean;
  readonly children: ReactNode;
};

/** A square pane whose nearness and place are those of the other one. */
export function LinkedPane({ zoom, side, label, focusable, children }: LinkedPaneProps) {
  return (
    <TransformWrapper
      {...ZOOM}
      minScale={0.5}
      limitToBounds={false}
      ref={(pane) => zoom.attach(side, pane)}
      onTransform={(_, view) => zoom.moved(side, view)}
    >
      <TransformComponent
        wrapperClass={styles.pane ?? ""}
        contentClass={styles.content ?? ""}
        wrapperProps={{
          role: "group",
          "aria-label": label,
          "aria-describedby": "compare-keys",
          tabIndex: focusable ? 0 : -1,
        }}
      >
        {children}
      </TransformComponent>
    </TransformWrapper>
  );
}
