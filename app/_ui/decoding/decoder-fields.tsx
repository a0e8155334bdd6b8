import type { DecoderName } from "#core/decoding/decoders";
import type { FormProps } from "./decoder-form.tsx";
import { DiamondForm } from "./diamond-form.tsx";
import { HallmarkForm } from "./hallmark-form.tsx";
import { MakingForm } from "./making-form.tsx";
import { NumberForm } from "./number-form.tsx";
import { WordingForm } from "./wording-form.tsx";

/** The fields of a decoder's form. */
export function DecoderFields({ name, ...props }: FormProps & { readonly name: DecoderName }) {
  switch (name) {
    case "wording":
      return <WordingForm {...props} />;
    case "hallmarks":
      return <HallmarkForm {...props} />;
    case "registration-diamond":
      return <DiamondForm {...props} />;
    case "materials":
      return <MakingForm {...props} />;
    case "registered-designs":
    case "us-patents":
    case "us-design-patents":
    case "us-trade-marks":
      return <NumberForm name={name} {...props} />;
  }
}
