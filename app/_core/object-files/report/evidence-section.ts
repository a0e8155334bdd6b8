import { reasonsOf } from "../../dating/reasons.ts";
import { periodsOf } from "../../dating/window.ts";
import { yearsShown } from "../../dating/years-shown.ts";
import type { FileEvidence } from "../evidence.ts";
import type { Phrase, ReportBlock, ReportSection } from "./blocks.ts";
import type { ReportParts } from "./parts.ts";
import { beginning, brief, first, msg, row, word, yearsPhrase } from "./phrases.ts";

/** Each piece with what it says, how much it tells and what it contradicts; then all of them on one axis. */
export function evidenceSection(parts: ReportParts): ReportSection<Phrase> {
  const { estimate, evidence, room } = parts;
  const heading = msg("sections.evidence");
  if (evidence.length === 0)
    return { id: "evidence", heading, blocks: [{ is: "text", says: msg("notDated") }] };
  const [reasons, more] = first(reasonsOf(estimate, evidence), room.pieces);
  const rows = reasons.flatMap((reason) => {
    const piece = evidence.find(({ id }) => id === reason.evidenceId);
    if (!piece) return [];
    const { strength, params } = reason;
    const against = reason.against.map((id) =>
      named(
        evidence.find((each) => each.id === id),
        parts,
      ),
    );
    return [
      [
        row([named(piece, parts), sourceOf(piece, parts)]),
        row([stated(piece), { key: `dating.model.${reason.model}` }], ": "),
        row(
          [
            { key: `dating.strength.${strength}` },
            msg("evidence.weight", {
              bits: { figure: params.bits },
              reliability: { figure: params.reliability },
            }),
            ...(against.length > 0 ? [msg("evidence.contradicts", { pieces: row(against, "; ") })] : []),
          ],
          ". ",
        ),
      ],
    ];
  });
  const head = ["piece", "states", "tells"].map((column) => msg(`evidence.${column}`));
  return {
    id: "evidence",
    heading,
    blocks: [
      { is: "table", caption: msg("evidence.caption"), head, rows },
      ...more,
      chart(
        parts,
        reasons.flatMap(({ evidenceId }) => evidence.filter(({ id }) => id === evidenceId)),
      ),
    ],
  };
}

/** Its date, and the others of which any may be meant instead. */
const stated = ({ interval, alternatives = [] }: FileEvidence): Phrase =>
  [interval, ...alternatives]
    .map(({ edtf }): Phrase => ({ edtf }))
    .reduce((first, second) => ({ key: "worksheet.pieceOr", params: { first, second } }));

/** What a piece is called: a step of the provenance by who had it, a mark by where it stands as well. */
function named(piece: FileEvidence | undefined, { file, room }: ReportParts): Phrase {
  if (piece === undefined) return "";
  const { item, reason } = piece;
  if (item.list === "events") {
    const event = file.events.find(({ id }) => id === item.id);
    if (!event) return brief(reason, room);
    return row([word("events", event.kind), brief(event.to || event.from, room)], ": ");
  }
  const place = file.marks.find(({ id }) => id === item.id)?.place ?? "";
  const says: Phrase = reason === "" ? { edtf: piece.interval.edtf } : beginning(reason, 240, room);
  return row([says, brief(place, room)], ", ");
}

/** Where it is from: of an entry the citations say it. */
function sourceOf({ item, reason, source }: FileEvidence, { room }: ReportParts): Phrase {
  const from = source === reason || source.startsWith("/") ? "" : beginning(source, 200, room);
  const told = item.list === "events" && !/^[-\d/X~?%]+$/.test(reason) ? beginning(reason, 240, room) : "";
  return row([told, from]);
}

function chart(parts: ReportParts, shown: readonly FileEvidence[]): ReportBlock<Phrase> {
  const { estimate, evidence } = parts;
  const years = yearsShown(estimate, evidence);
  const { grid, posterior, shortest } = estimate;
  const ranges = shortest[95].ranges;
  return {
    is: "chart",
    chart: "dates",
    caption: msg("evidence.chart"),
    years,
    curve: { from: grid.from, likely: posterior },
    bars: [
      ...ranges.map(({ from, to }) => ({
        ...{ label: msg("evidence.made"), note: "", from, to },
        when: yearsPhrase(from, to),
      })),
      ...shown.map((piece) => {
        const periods = periodsOf(piece);
        const [period] = periods;
        return {
          label: named(piece, parts),
          note: "",
          when: { edtf: piece.interval.edtf },
          from: period?.earliest ?? null,
          to: period?.latest ?? null,
        };
      }),
    ],
  };
}
