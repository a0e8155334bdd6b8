/** The four points of a measure on a photograph, by the names of their fields. */
export const POINTS = ["scale-a", "scale-b", "object-a", "object-b"] as const;
export type PointName = (typeof POINTS)[number];
type Point = { readonly x: number; readonly y: number };
export type Points = Readonly<Record<PointName, Point>>;

/** Where the points lie before anybody has moved them: the scale below, the object across the middle. */
export function startPoints({ width, height }: { readonly width: number; readonly height: number }): Points {
  const at = (x: number, y: number) => ({ x: Math.round(x * width), y: Math.round(y * height) });
  return {
    "scale-a": at(0.3, 0.9),
    "scale-b": at(0.7, 0.9),
    "object-a": at(0.15, 0.5),
    "object-b": at(0.85, 0.5),
  };
}

/** The fields of each point. */
export const FIELDS: Readonly<Record<PointName, { readonly x: string; readonly y: string }>> = {
  "scale-a": { x: "scale_x1", y: "scale_y1" },
  "scale-b": { x: "scale_x2", y: "scale_y2" },
  "object-a": { x: "object_x1", y: "object_y1" },
  "object-b": { x: "object_x2", y: "object_y2" },
};
