/** A photograph of the demo that anyone can look up without having one at hand. */
export type PhotographToTry = {
  /** File name without its ending; also its address: /try/<name>. */
  readonly name: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
};
