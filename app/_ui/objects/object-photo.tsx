type ObjectPhotoProps = {
  readonly image: { readonly sha256: string; readonly width: number; readonly height: number };
  readonly alt: string;
  /** Where the file's images are: `/images`, or under a shared link. */
  readonly base?: string;
  /** Pixels in which it is shown at most. */
  readonly shownAt?: 320 | 640 | 1280;
};

/** An image of an object file, in the size that the screen needs. */
export function ObjectPhoto({ image, alt, base = "/images", shownAt = 640 }: ObjectPhotoProps) {
  const { sha256, width, height } = image;
  const query = width > shownAt ? `?w=${shownAt}` : "";
  return <img src={`${base}/${sha256}${query}`} alt={alt} width={width} height={height} loading="lazy" />;
}
