import type { FieldError } from "#core/field-error";
import type { ActingMember } from "#core/members/member";
import { COMMANDS, type CommandName } from "#core/object-files/commands";
import type { FileImage } from "#core/object-files/kept-file";
import { photographOf } from "#core/object-files/photograph-of";
import { readCommand } from "#core/object-files/read-command";
import type { Typed } from "#core/questions/typed-text";
import { fail, ok, type Result } from "#core/result";
import { acceptMatch } from "#usecases/accept-match";
import { keepObjectImage } from "#usecases/keep-object-image";
import { changeObjectFile } from "#usecases/object-files/change-object-file";
import { findFileToChange } from "#usecases/object-files/find-object-file";
import { showLookUp } from "#usecases/show-look-up";
import { takeWorksheet } from "#usecases/take-worksheet";
import { type Live, live } from "../live.ts";
import { done, refuse } from "../words-form.ts";
import { lookUpFromFile } from "./look-up-from-file.ts";
import { ACCESS_ACTS, openToOthers } from "./open-to-others.ts";
import { readObjectForm } from "./read-object-form.ts";
import { restoreByForm } from "./restore-by-form.ts";

type Changed = Result<number, readonly FieldError[]>;

/** Does to an object file what a form asks for; to whom it is not open, it is as if it were not. */
export async function actOnObjectFile(
  request: Request,
  id: string,
  act: string,
  by: ActingMember,
): Promise<Response> {
  const access = ACCESS_ACTS.find((each) => each === act);
  if (access) return openToOthers(request, id, access, by);
  if (act === "look-up") return lookUpFromFile(request, id, by);
  const command = COMMANDS.find((each) => each === act);
  const wired = await live();
  const found = (command || act === "restore") && (await findFileToChange(wired, id, by.id));
  if (act === "restore" && found) return restoreByForm(request, id, by);
  if (!command || !found) return unknown(request, id);
  const form = await readObjectForm(request, command);
  if (!form.ok) {
    const { error, typed } = form.error;
    return refuse(request, [error], { ...typed, did: command }, pageIn(typed, id));
  }
  const { file } = form.value;
  const page = pageIn(form.value.typed, id);
  const image = file ? await take(wired, id, by, file) : null;
  const typed: Typed = { ...form.value.typed, did: command, ...(image?.ok ? asTyped(image.value) : {}) };
  if (image && !image.ok) return refuse(request, [image.error], typed, page);
  const kept = image ? image.value : await imageNamed(wired, id, typed);
  if (command === "photograph" && kept === null && !typed.sha256)
    return refuse(request, [{ field: "photograph", rule: "required", received: "" }], typed, page);
  const changed = await change(wired, { id, by, command, typed, image: kept });
  if (!changed.ok) return refuse(request, changed.error, typed, page);
  const next = pathIn(typed.done, page);
  const said = command === "remove" ? "removed" : "saved";
  return done(
    request,
    { id, version: changed.value },
    `${next}${next.includes("?") ? "&" : "?"}said=${said}`,
  );
}

const unknown = (request: Request, id: string): Response =>
  (request.headers.get("accept") ?? "").includes("application/json")
    ? Response.json({ error: { field: "file", rule: "object-file-unknown", received: id } }, { status: 404 })
    : new Response(null, { status: 404 });

async function take(
  wired: Live,
  id: string,
  by: ActingMember,
  file: File,
): Promise<Result<FileImage, FieldError>> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const kept = await keepObjectImage(wired, { id, member: by.id, bytes });
  return kept.ok ? kept : fail({ ...kept.error, received: `${file.name}, ${kept.error.received}` });
}

const asTyped = ({ sha256, width, height }: FileImage): Typed => ({
  sha256,
  width: String(width),
  height: String(height),
});

/** An image that was taken before, when the rest of the form was refused. */
const imageNamed = async ({ objectImages }: Live, id: string, { sha256 = "" }: Typed) =>
  /^[0-9a-f]{64}$/.test(sha256) ? objectImages.has(id, sha256) : null;

type Asked = {
  readonly id: string;
  readonly by: ActingMember;
  readonly command: CommandName;
  readonly typed: Typed;
  readonly image: FileImage | null;
};

async function change(wired: Live, asked: Asked): Promise<Changed> {
  const { id, by, command, typed, image } = asked;
  const had = Number(typed.version) || 0;
  if (command === "match") {
    const { mark = "", entry = "", lookUp = "", revision = "" } = typed;
    return acceptMatch(
      { ...wired, show: (each) => showLookUp(wired, each) },
      { id, by, had, mark, entry, lookUp, revision },
    );
  }
  const stamp = { by: { id: by.id, name: by.name }, at: wired.clock.now().toISOString() };
  const read = readCommand(command, typed, stamp);
  if (!read.ok) return read;
  if (read.value.is === "pieces") {
    const taken = await takeWorksheet(wired, { id, by, had, pieces: read.value.items });
    return taken.ok ? ok(taken.value.version) : taken;
  }
  const changed = await changeObjectFile(wired, { id, by, had, command: read.value });
  if (!changed.ok || image === null || command === "photograph") return changed;
  const next = photographOf(read.value, image, typed.photographId ?? "");
  if (next === null) return ok(changed.value);
  return changeObjectFile(wired, { id, by, had, command: next });
}

const pageIn = (typed: Typed, id: string): string => pathIn(typed.page, `/objects/${id}`);

/** A path of object files, with nothing but a point or a part in its query. */
const pathIn = (text: string | undefined, otherwise: string): string =>
  text !== undefined && /^\/objects\/[\w-]+(\/[\w-]+)?(\?[\w-]+=[\w-]+)?$/.test(text) ? text : otherwise;
