import { rounded } from "./crop-geometry.ts";
import type { Chosen } from "./use-chosen-photographs.ts";

const NOT_FRAMED = { x: "", y: "", width: "", height: "", turn: "" };

/**
 * Puts photographs, their marks and their frames into a form that is about to be sent: the n-th value of each field
 * belongs to the n-th photograph, and those that were looked up before come first, as the server reads them.
 */
export function addPhotographs(form: FormData, chosen: readonly Chosen[]): void {
  const before = chosen.filter(({ sent }) => typeof sent === "string");
  const files = chosen.filter(({ sent }) => typeof sent !== "string");
  for (const { sent, mark, region, framedBy } of [...before, ...files]) {
    form.append(typeof sent === "string" ? "again" : "photograph", sent);
    form.append("mark", String(mark));
    for (const [name, value] of Object.entries(
      region && framedBy === "person" ? rounded(region) : NOT_FRAMED,
    ))
      form.append(name, String(value));
  }
}
