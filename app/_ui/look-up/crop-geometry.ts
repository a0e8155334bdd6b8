import { checkRegion, type Region, SMALLEST_REGION } from "#core/photographs/region";

/*
 * A region is a box in the upright photograph and a turn about the box's own centre. On the bench the whole
 * photograph is shown turned about its own middle, and the box lies straight over it:
 *
 *      upright, as stored            as shown, turned clockwise
 *      +-------------+                  /\
 *      |    c        |      R(turn)    /c \
 *      |      M      |    --------->   \ M \
 *      +-------------+                  \  /
 *
 * Width and height of the box are the same in both; only its centre moves.
 */

export type Size = { readonly width: number; readonly height: number };
export type Box = Size & { readonly x: number; readonly y: number };

/** The size of the box that holds an image turned by some degrees. */
export function turnedSize({ width, height }: Size, turn: number): Size {
  const [cos, sin] = cosSin(turn).map(Math.abs) as [number, number];
  return { width: width * cos + height * sin, height: width * sin + height * cos };
}

/** Where a region lies on the turned photograph, in the photograph's pixels from the top left of its box. */
export function shown(region: Region, image: Size): Box {
  const [cos, sin] = cosSin(region.turn);
  const whole = turnedSize(image, region.turn);
  const dx = region.x + region.width / 2 - image.width / 2;
  const dy = region.y + region.height / 2 - image.height / 2;
  const centreX = dx * cos - dy * sin + whole.width / 2;
  const centreY = dx * sin + dy * cos + whole.height / 2;
  const { width, height } = region;
  return { x: centreX - width / 2, y: centreY - height / 2, width, height };
}

/** The region that a box on the turned photograph stands for; undoes {@link shown}. */
export function regionOf(box: Box, image: Size, turn: number): Region {
  const [cos, sin] = cosSin(turn);
  const whole = turnedSize(image, turn);
  const dx = box.x + box.width / 2 - whole.width / 2;
  const dy = box.y + box.height / 2 - whole.height / 2;
  const centreX = dx * cos + dy * sin + image.width / 2;
  const centreY = -dx * sin + dy * cos + image.height / 2;
  const { width, height } = box;
  return { x: centreX - width / 2, y: centreY - height / 2, width, height, turn };
}

/** Goes from an allowed region towards a wanted one, as far as the reference's own rule allows. */
export function towards(from: Region, wanted: Region, image: Size): Region {
  if (checkRegion(wanted, image).ok) return wanted;
  let [low, high] = [0, 1];
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (checkRegion(between(from, wanted, middle), image).ok) low = middle;
    else high = middle;
  }
  return between(from, wanted, low);
}

/**
 * The same place turned otherwise. The box stands upright on what is shown, so with every quarter turn (the nearest
 * to the turn) its width and height change places about its centre: the whole photograph stays the whole. Where it
 * would reach past the sheet that the turned photograph takes up, it is moved back and, if it must be, made smaller.
 */
export function turned(region: Region, turn: number, image: Size): Region {
  const centre = { x: region.x + region.width / 2, y: region.y + region.height / 2 };
  const size =
    (quarters(turn) - quarters(region.turn)) % 2 === 0
      ? { width: region.width, height: region.height }
      : { width: region.height, height: region.width };
  const about = (sides: Size): Region => ({
    x: centre.x - sides.width / 2,
    y: centre.y - sides.height / 2,
    ...sides,
    turn,
  });
  const wanted = regionOf(insideSheet(shown(about(size), image), turnedSize(image, turn)), image, turn);
  const side = SMALLEST_REGION;
  const seed = {
    x: Math.min(Math.max(0, centre.x - side / 2), image.width - side),
    y: Math.min(Math.max(0, centre.y - side / 2), image.height - side),
    width: side,
    height: side,
    turn,
  };
  return towards(seed, wanted, image);
}

/** Does the box take up all of the sheet that the turned photograph is shown on? */
export function isWhole(region: Region, image: Size): boolean {
  const box = shown(region, image);
  const sheet = turnedSize(image, region.turn);
  return box.width > sheet.width - 1 && box.height > sheet.height - 1;
}

/** How many quarter turns lie nearest to some degrees. */
const quarters = (degrees: number): number => Math.round(degrees / 90);

/** A box moved, and made smaller where it must be, so that it lies on its sheet. */
function insideSheet(box: Box, sheet: Size): Box {
  const width = Math.min(box.width, sheet.width);
  const height = Math.min(box.height, sheet.height);
  return {
    x: Math.min(Math.max(0, box.x), sheet.width - width),
    y: Math.min(Math.max(0, box.y), sheet.height - height),
    width,
    height,
  };
}

/** Tenths of a pixel are enough to send. */
export function rounded(region: Region): Region {
  const tenth = (value: number) => Math.round(value * 10) / 10;
  const { x, y, width, height, turn } = region;
  // A turned box may begin outside the photograph; an upright one only by a rounding error.
  const start = (value: number) => (turn === 0 ? Math.max(0, tenth(value)) : tenth(value));
  return { x: start(x), y: start(y), width: tenth(width), height: tenth(height), turn };
}

function between(a: Region, b: Region, part: number): Region {
  const mix = (key: "x" | "y" | "width" | "height") => a[key] + (b[key] - a[key]) * part;
  return { x: mix("x"), y: mix("y"), width: mix("width"), height: mix("height"), turn: b.turn };
}

/** Cosine and sine of degrees, exact at quarter turns. */
function cosSin(degrees: number): [number, number] {
  const quarter = ((degrees % 360) + 360) % 360;
  if (quarter === 0) return [1, 0];
  if (quarter === 90) return [0, 1];
  if (quarter === 180) return [-1, 0];
  if (quarter === 270) return [0, -1];
  const radians = (degrees * Math.PI) / 180;
  return [Math.cos(radians), Math.sin(radians)];
}
