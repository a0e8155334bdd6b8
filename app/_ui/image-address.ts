/** Widths in which the server hands out a stored image; it never enlarges one. */
const WIDTHS = [320, 640, 1280] as const;

type Image = { readonly sha256: string; readonly width: number };

export const fullImage = (image: Image): string => `/images/${image.sha256}`;

/** The smallest handed-out image that is at least `wanted` pixels wide. */
export function imageAtLeast(image: Image, wanted: number): string {
  const width = WIDTHS.find((each) => each >= wanted);
  return width === undefined ? fullImage(image) : `${fullImage(image)}?w=${width}`;
}

/** Every size of an image for `srcset`, so that the browser takes what the screen needs. */
export function imageSizes(image: Image): string {
  const smaller = WIDTHS.filter((width) => width < image.width).map(
    (width) => `${fullImage(image)}?w=${width} ${width}w`,
  );
  return [...smaller, `${fullImage(image)} ${image.width}w`].join(", ");
}
