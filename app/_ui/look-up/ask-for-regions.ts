import type { Proposal } from "#core/photographs/proposal";
import type { Size } from "./crop-geometry.ts";

/** Where the mark may be, best first, in pixels of the photograph on the bench. */
export type Places = { readonly proposals: readonly Proposal[]; readonly confident: boolean };

type Answer = Size & Places;

/** The longer side of the copy that is sent: the network that finds marks sees less. */
const SIDE = 640;

/**
 * Asks the reference where the mark is. A reduced copy is sent, since nothing is kept of it; the look-up itself sends
 * the file.
 * @param url an address of the photograph that the browser can show
 * @returns null when no answer can be had: the person frames the mark without it
 */
export async function askForRegions(url: string, size: Size, signal: AbortSignal): Promise<Places | null> {
  const copy = await reducedCopy(url, size);
  if (!copy) return null;
  const form = new FormData();
  form.set("photograph", copy, "photograph.jpg");
  try {
    const response = await fetch("/api/regions", { method: "POST", body: form, signal });
    if (!response.ok) return null;
    const answer = (await response.json()) as Answer;
    const across = size.width / answer.width;
    const down = size.height / answer.height;
    const proposals = answer.proposals.map(({ region: { x, y, width, height, turn }, confidence }) => ({
      region: { x: x * across, y: y * down, width: width * across, height: height * down, turn },
      confidence,
    }));
    return { proposals, confident: answer.confident };
  } catch {
    // No connection, or another photograph was chosen: the frame is drawn by hand.
    return null;
  }
}

async function reducedCopy(url: string, { width, height }: Size): Promise<Blob | null> {
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
  } catch {
    return null;
  }
  const scale = Math.min(1, SIDE / Math.max(width, height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const context = canvas.getContext("2d");
  if (!context) return null;
  // As the reference does it: what is transparent lies on white.
  context.fillStyle = "#ffffff";
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve) => canvas.toBlob(resolve, "image/jpeg", 0.92));
}
