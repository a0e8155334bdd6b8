/** A mark as designed: drawings in millimetres about its middle. */
export interface Design {
  width: number;
  height: number;
  /** The ground of the mark as SVG, filled with `F`; empty where the mark has no ground. */
  field: string;
  /** What stands on the ground, in order, each in one ink. */
  device: { drawing: string; ink: number }[];
  words: string;
  emblem: string;
  frame: string;
}
