import type { ReportBlock } from "#core/object-files/report/blocks";
import { outline, warp } from "../compare/warp.ts";
import styles from "./laid-mark.module.css";

type Laid = Extract<ReportBlock<string>, { readonly is: "laid" }>;
type CloseUp = Laid["own"];

type LaidMarkProps = {
  readonly block: Laid;
  /** Where the file's own images are. */
  readonly images: string;
};

/** Pixels across which each picture stands, on every screen: one lies over another without a script. */
const ACROSS = 280;

/** A mark, its reference with the same places numbered, and squares of one between squares of the other. */
export function LaidMark({ block, images }: LaidMarkProps) {
  const { own, reference, over, homography } = block;
  const { region } = reference;
  const addressOf = ({ from, sha256 }: CloseUp) => `${from === "file" ? images : "/images"}/${sha256}`;
  return (
    <div className={styles.row}>
      <figure>
        <NumberedPlaces closeUp={own} src={addressOf(own)} />
        <figcaption>{own.caption}</figcaption>
      </figure>
      <figure>
        <NumberedPlaces closeUp={reference} src={addressOf(reference)} />
        <figcaption>{reference.caption}</figcaption>
      </figure>
      <figure>
        <div className={styles.frame} role="img" aria-label={over.alt} style={frameOf(region)}>
          <Picture closeUp={reference} src={addressOf(reference)} />
          <span className={styles.squares}>
            <span className={styles.turned} style={{ transform: `rotate(${region.turn}deg)` }}>
              <img
                src={addressOf(own)}
                alt=""
                style={{
                  width: own.width,
                  height: own.height,
                  clipPath: outline(own.region),
                  transform: warp(homography, region, ACROSS / region.width),
                }}
              />
            </span>
          </span>
        </div>
        <figcaption>{over.caption}</figcaption>
      </figure>
    </div>
  );
}

const frameOf = ({ width, height }: CloseUp["region"]) => ({
  width: ACROSS,
  height: (ACROSS * height) / width,
});

type PictureProps = { readonly closeUp: CloseUp; readonly src: string };

/** The region of a photograph, turned as the reference turns it. */
function Picture({ closeUp: { region, width, height }, src }: PictureProps) {
  const { x, y, turn } = region;
  const middle = `${x + region.width / 2} ${y + region.height / 2}`;
  return (
    <svg viewBox={`${x} ${y} ${region.width} ${region.height}`} aria-hidden="true">
      <image href={src} width={width} height={height} transform={`rotate(${turn} ${middle})`} />
    </svg>
  );
}

function NumberedPlaces({ closeUp, src }: PictureProps) {
  const { region, places, alt } = closeUp;
  const unit = region.width / 100;
  return (
    <div className={styles.frame} role="img" aria-label={alt} style={frameOf(region)}>
      <Picture {...{ closeUp, src }} />
      <svg
        viewBox={`${region.x} ${region.y} ${region.width} ${region.height}`}
        className={styles.places}
        aria-hidden="true"
      >
        {places.map((place, i) => {
          const [x, y] = turned(place, region);
          // A number that would be cut off at the right stands at the left.
          const beside = x + 9 * unit > region.x + region.width ? -5 * unit : 5 * unit;
          return (
            <g key={`${x} ${y}`}>
              <circle className={styles.under} cx={x} cy={y} r={1.8 * unit} strokeWidth={1.3 * unit} />
              <circle className={styles.ring} cx={x} cy={y} r={1.8 * unit} strokeWidth={0.6 * unit} />
              <circle className={styles.disc} cx={x + beside} cy={y} r={2.7 * unit} />
              <text x={x + beside} y={y + 1.4 * unit} fontSize={4 * unit}>
                {i + 1}
              </text>
            </g>
          );
        })}
      </svg>
    </div>
  );
}

/** Where a place of the photograph is once its region is turned upright. */
function turned([x, y]: CloseUp["places"][number], region: CloseUp["region"]): readonly [number, number] {
  const [middleX, middleY] = [region.x + region.width / 2, region.y + region.height / 2];
  const turn = (region.turn * Math.PI) / 180;
  const [right, down] = [x - middleX, y - middleY];
  return [
    middleX + right * Math.cos(turn) - down * Math.sin(turn),
    middleY + right * Math.sin(turn) + down * Math.cos(turn),
  ];
}
