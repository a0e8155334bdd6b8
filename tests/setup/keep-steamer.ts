import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { STEAMER } from "../core/object-files/steamer-story.ts";
import { id } from "../core/object-files/story.ts";
import { pictureOfBoat } from "./picture-of-boat.ts";

const demo = (path: string) => readFile(fileURLToPath(new URL(`../../seed/demo/${path}`, import.meta.url)));

type Fields = Readonly<Record<string, string>>;

/**
 * Opens a file for the steamer in a running app and does everything to it that its story tells, with photographs; the
 * printed marks are looked up, the label is matched by hand.
 * @param cookie of the member who owns it
 * @returns the path of the file
 */
export async function keepSteamer(address: string, cookie: string): Promise<string> {
  const post = async (path: string, fields: Fields, photograph?: Buffer) => {
    const body = new FormData();
    for (const [name, value] of Object.entries(fields)) body.set(name, value);
    if (photograph) body.set("photograph", new Blob([new Uint8Array(photograph)]), "photograph.jpg");
    const headers = { cookie, origin: address, accept: "application/json" };
    const answer = await fetch(`${address}${path}`, { method: "POST", body, headers, redirect: "manual" });
    const text = await answer.text();
    if (answer.status >= 400) throw new Error(`${path} ${JSON.stringify(fields)}: ${answer.status} ${text}`);
    return { location: answer.headers.get("location") ?? "", json: asJson(text) };
  };
  const [, described = {}] = STEAMER[0] ?? [];
  const opened = await post("/api/objects", described);
  const path = new URL(opened.location || `/objects/${opened.json.id}`, address).pathname;
  let version = 1;
  const change = async (command: string, fields: Fields, photograph?: Buffer) => {
    const done = await post(`/api${path}/${command}`, { ...fields, version: `${version}` }, photograph);
    version = Number(done.json.version ?? version);
  };
  const take = (n: number, photograph: Buffer, of: string, item: string, shows: string) =>
    change("photograph", { id: id(800 + n), of, item, shows, credit: "Mara Osk" }, photograph);
  const finding = STEAMER.filter(([command]) => command === "finding");
  const others = STEAMER.slice(1).filter(([command]) => command !== "match" && command !== "finding");
  for (const [command, fields] of others) await change(command, fields);
  await take(1, await pictureOfBoat(0), "whole", "", "From port, with a scale of 100 mm");
  await take(2, await pictureOfBoat(1), "whole", "", "From starboard");
  await take(4, await demo("try/06.webp"), "mark", id(3), "Deck, daylight");
  const rubbed = await sharp(await demo("photographs/brandreth-sons-schooner-3.webp"))
    .rotate(8, { background: "#a08a3c" })
    .modulate({ brightness: 0.8 })
    .jpeg()
    .toBuffer();
  await take(5, rubbed, "mark", id(4), "Hull, raking light");
  await take(6, await demo("photographs/lund-lamp-label-3.webp"), "mark", id(5), "Stern");
  for (const mark of [id(3), id(4)]) {
    const { json } = await post(`/api${path}/look-up`, { mark });
    await change("match", { mark, entry: "brandreth-sons-schooner", lookUp: String(json.lookUp) });
  }
  await change("match", { mark: id(5), entry: "lund-lamp-label", lookUp: "" });
  // It stands on the revisions that are matched when it is stated.
  for (const [command, fields] of finding) await change(command, fields);
  return path;
}

function asJson(text: string): Readonly<Record<string, unknown>> {
  try {
    return JSON.parse(text);
  } catch {
    return {};
  }
}
