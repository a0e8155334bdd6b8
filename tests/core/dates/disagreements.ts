/** Where the reading of EDTF differs from the file of cases, and what the specification says about it. */
type Disagreement = {
  readonly string: string;
  /** Which of the cases of that string, from 0. */
  readonly nth: number;
  readonly ours: string | readonly string[];
  readonly because: string;
};

const UNKNOWN_END =
  "an empty end is unknown (level 1, extended interval): the file carries one parser's ten years, which the specification does not know";
const SIGNIFICANT =
  "S is followed by the number of significant digits (level 2), and the digits after them may be any, as the specification reads 1950S2 and Y3388E2S3";
const LESS_FINE_END =
  "an interval's end may be named less finely than its start (level 0: 2004-02-01/2005), and it reaches to its last day, which is not before the start";
const TRIMMED = "the spaces around it are somebody's typing and are taken off before it is read as EDTF";

export const DISAGREEMENTS: readonly Disagreement[] = [
  {
    string: "Y171010000S3",
    nth: 0,
    ours: ["first day 171000000-01-01", "last day 171999999-12-31"],
    because: `${SIGNIFICANT}; the span printed beside this example, 171010000 to 171010999, leaves six digits significant and contradicts the sentence above it`,
  },
  {
    string: "Y17101E4S3",
    nth: 0,
    ours: ["first day 171000000-01-01", "last day 171999999-12-31"],
    because: SIGNIFICANT,
  },
  { string: "1953S2", nth: 0, ours: ["first day 1900-01-01", "last day 1999-12-31"], because: SIGNIFICANT },
  { string: "1953S3", nth: 0, ours: ["first day 1950-01-01", "last day 1959-12-31"], because: SIGNIFICANT },
  { string: "Y-20E2S3", nth: 0, ours: "first day -2009-01-01", because: SIGNIFICANT },
  { string: "1984-06-02?/", nth: 0, ours: "last day unknown", because: UNKNOWN_END },
  { string: "2004-06-01/", nth: 0, ours: "last day unknown", because: UNKNOWN_END },
  { string: "/2006", nth: 0, ours: "first day unknown", because: UNKNOWN_END },
  {
    string: "2010-24",
    nth: 0,
    ours: "last day 2011-02-28",
    because:
      "the specification names the seasons and gives no months (level 1); the file has winter both as December alone and as December to February, of which one had to be declared",
  },
  { string: " 1863-03-29", nth: 0, ours: "accepted", because: TRIMMED },
  { string: "1863-03-29 ", nth: 0, ours: "accepted", because: TRIMMED },
  { string: "0000-01-03/0000-01", nth: 0, ours: "accepted", because: LESS_FINE_END },
  { string: "0000-02/0000", nth: 0, ours: "accepted", because: LESS_FINE_END },
  { string: "2004-06-11%/2004-%06", nth: 0, ours: "accepted", because: LESS_FINE_END },
  { string: "2004-06-11%/2004-06~", nth: 0, ours: "accepted", because: LESS_FINE_END },
  {
    string: "Y-61000/-2000",
    nth: 0,
    ours: "accepted",
    because:
      "years written with Y (level 1) are dates, and the specification keeps only times of day out of intervals; -61000 is before -2000",
  },
  {
    string: "second quarter of 2001",
    nth: 0,
    ours: "refused",
    because:
      "it is the specification's description of 2001-34, not a date in its form; as typed words it is understood as 2001-34",
  },
];
