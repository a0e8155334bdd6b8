import { closeUp } from "../close-up.ts";
import type { Region } from "../preprocess.ts";
import type { Grey } from "../square.ts";
import { resample } from "./resample.ts";

/** What of a photograph lies in a region, turned as the region says, grey, its contrast spread from 0 to 1. */
export async function cutRegion(
  photograph: Uint8Array | string,
  region: Region,
  side: number,
): Promise<Grey> {
  // The box round the turned region is up to half as long again; it is brought to the wanted size of the region itself.
  const cos = Math.abs(Math.cos((region.turn * Math.PI) / 180));
  const sin = Math.abs(Math.sin((region.turn * Math.PI) / 180));
  const across = region.width * cos + region.height * sin;
  const down = region.width * sin + region.height * cos;
  const around = Math.max(across, down) / Math.max(region.width, region.height);
  const close = await closeUp(photograph, region, Math.round(side * around));
  const whole = { values: spread(close.grey), width: close.width, height: close.height };
  const width = Math.max(1, Math.round(region.width * close.scaleX));
  const height = Math.max(1, Math.round(region.height * close.scaleY));
  const centreX = (region.x + region.width / 2 - close.left) * close.scaleX;
  const centreY = (region.y + region.height / 2 - close.top) * close.scaleY;
  // The photograph is turned clockwise about the box's centre before the box is cut: looked up the other way round.
  const [c, s] = [Math.cos((-region.turn * Math.PI) / 180), Math.sin((-region.turn * Math.PI) / 180)];
  return resample(whole, width, height, (x, y) => {
    const [u, v] = [x - width / 2, y - height / 2];
    return [centreX + u * c - v * s, centreY + u * s + v * c];
  });
}

/** Darkest to lightest hundredth become 0 to 1. */
function spread(grey: Uint8Array): Float32Array {
  const counts = new Uint32Array(256);
  for (const value of grey) counts[value] = (counts[value] ?? 0) + 1;
  const level = (share: number) => {
    let left = share * grey.length;
    for (let value = 0; value < 256; value++) {
      left -= counts[value] ?? 0;
      if (left <= 0) return value;
    }
    return 255;
  };
  const [dark, light] = [level(0.01), level(0.99)];
  const range = Math.max(16, light - dark);
  return Float32Array.from(grey, (value) => Math.min(1, Math.max(0, (value - dark) / range)));
}
