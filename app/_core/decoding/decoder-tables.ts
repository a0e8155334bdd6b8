import hallmarkCycles from "./tables/hallmark-cycles.json" with { type: "json" };
import hallmarkMarks from "./tables/hallmark-marks.json" with { type: "json" };
import labelWording from "./tables/label-wording.json" with { type: "json" };
import materials from "./tables/materials.json" with { type: "json" };
import registrationDiamond from "./tables/registration-diamond.json" with { type: "json" };
import ukDesignsBefore1884 from "./tables/uk-designs-before-1884.json" with { type: "json" };
import ukRegisteredDesigns from "./tables/uk-registered-designs.json" with { type: "json" };
import usDesignPatents from "./tables/us-design-patents.json" with { type: "json" };
import usPatents from "./tables/us-patents.json" with { type: "json" };
import usTradeMarks from "./tables/us-trade-marks.json" with { type: "json" };

/** Every table that a decoder reads: whoever wants to know by which a date was found takes their sum. */
export const DECODER_TABLES = {
  ...{ hallmarkCycles, hallmarkMarks, labelWording, materials, registrationDiamond, ukDesignsBefore1884 },
  ...{ ukRegisteredDesigns, usDesignPatents, usPatents, usTradeMarks },
} as const;
