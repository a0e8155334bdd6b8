import sharp from "sharp";
import { expect, it } from "vitest";
import { checkFile } from "../../app/_ui/look-up/check-file.ts";
import { beginsLikeImage } from "../../app/_ui/look-up/image-start.ts";

const drawn = () => sharp({ create: { width: 16, height: 16, channels: 3, background: "#777" } });

it.each(["jpeg", "png", "webp", "tiff", "avif", "gif"] as const)(
  "knows the beginning of a %s file",
  async (kind) => {
    expect(beginsLikeImage(await drawn().toFormat(kind).toBuffer())).toBe(true);
  },
);

it.each(["not a photograph", "", "<svg></svg>", "%PDF-1.7"])(
  "knows that “%s” begins no photograph",
  (text) => {
    expect(beginsLikeImage(new TextEncoder().encode(text))).toBe(false);
  },
);

it("refuses a text that is called a photograph, by its name, and takes a photograph under any name", async () => {
  const text = new File(["not a photograph"], "notes.jpg", { type: "image/jpeg" });
  expect(await checkFile(text)).toEqual({ field: "photograph", rule: "image-type", received: "notes.jpg" });
  const bytes = new Uint8Array(await drawn().png().toBuffer());
  expect(await checkFile(new File([bytes], "scan.bin"))).toBeNull();
});

it("refuses an empty file, and one of more than 20 MB", async () => {
  expect(await checkFile(new File([], "empty.png"))).toMatchObject({ rule: "image-empty" });
  const large = new File([new Uint8Array(20 * 1024 * 1024 + 1)], "large.png");
  expect(await checkFile(large)).toMatchObject({ rule: "image-bytes", received: "large.png, 20.0 MB" });
});
