import { Fragment } from "react";
import type { AskedPhotograph } from "#core/look-ups/asked-photographs";
import { rounded } from "./crop-geometry.ts";

/** In a plain form: the photographs of a look-up, with their marks and their frames, to be asked with again. */
export function PhotographsAgain({ photographs }: { readonly photographs: readonly AskedPhotograph[] }) {
  return photographs.map(({ sha256, mark, region }, place) => (
    // By its place, since one photograph can be asked with twice; none ever moves.
    <Fragment key={place}>
      <input type="hidden" name="again" value={sha256} />
      <input type="hidden" name="mark" value={mark} />
      {Object.entries(rounded(region)).map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
    </Fragment>
  ));
}
