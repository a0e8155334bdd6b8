import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
let icons: Record<string, { body: string } | undefined> | undefined;

function star(points: number, inner: number, turn = -90): string {
  const corners = Array.from({ length: points * 2 }, (_, i) => {
    const radius = i % 2 === 0 ? 250 : 250 * inner;
    const angle = ((turn + (i * 180) / points) * Math.PI) / 180;
    return `${(256 + radius * Math.cos(angle)).toFixed(1)} ${(256 + radius * Math.sin(angle)).toFixed(1)}`;
  });
  return `<path d="M${corners.join("L")}Z"/>`;
}

/** Small signs that the trade's punches share and that are drawn here, on a 512 square. */
const DRAWN: Record<string, string> = {
  "star-4": star(4, 0.32),
  "star-5": star(5, 0.42),
  "star-6": star(6, 0.55),
  "star-8": star(8, 0.5),
  lozenge: '<path d="M256 40L430 256 256 472 82 256Z"/>',
  ring: '<path fill-rule="evenodd" d="M256 60a196 196 0 1 0 .1 0ZM256 160a96 96 0 1 1-.1 0Z"/>',
  disc: '<circle cx="256" cy="256" r="190"/>',
  cross: '<path d="M206 20h100l-24 186 210-24v148l-210-24 24 186H206l24-186-210 24V182l210 24Z"/>',
  saltire:
    '<path d="M90 20L256 186 422 20 492 90 326 256 492 422 422 492 256 326 90 492 20 422 186 256 20 90Z"/>',
  shuttle: '<path fill-rule="evenodd" d="M4 256Q256 90 508 256 256 422 4 256ZM150 216v80h212v-80Z"/>',
  spindle: '<path d="M240 10h32v110q90 70 90 130t-90 120v132h-32V370q-90-60-90-120t90-130Z"/>',
  keystone: '<path d="M110 40h292l-70 432H180Z"/>',
  horseshoe:
    '<path d="M100 480Q10 300 60 160 120 20 256 20T452 160Q502 300 412 480H310Q400 320 370 210 340 110 256 110T142 210Q112 320 202 480Z"/>',
  waves:
    '<g fill="none" stroke="currentColor" stroke-width="50"><path d="M10 130q62-80 123 0t123 0 123 0 123 0M10 256q62-80 123 0t123 0 123 0 123 0M10 382q62-80 123 0t123 0 123 0 123 0"/></g>',
  crescent: '<path d="M330 30A236 236 0 1 0 330 482 190 190 0 1 1 330 30Z"/>',
  thistle:
    '<path d="M150 20l40 90 40-90 26 90 26-90 40 90 40-90 20 150H130ZM140 190h232q40 170-90 200v112h-52V390Q100 360 140 190Z"/>',
  ladder:
    '<path d="M130 10h50v80h152V10h50v492h-50v-70H180v70h-50ZM180 140v60h152v-60ZM180 250v60h152v-60ZM180 360v40h152v-40Z" fill-rule="evenodd"/>',
  wheel:
    '<g fill="none" stroke="currentColor" stroke-width="44"><circle cx="256" cy="256" r="215"/><path d="M256 40v432M40 256h432M103 103l306 306M103 409l306-306"/></g><circle cx="256" cy="256" r="70"/>',
  gridiron:
    '<g fill="none" stroke="currentColor" stroke-width="40"><path d="M50 80h412v300H50ZM150 80v300M256 80v300M362 80v300M256 380v122"/></g>',
  hook: '<path d="M206 10h90v300q0 90 70 90t70-90l60 10q0 180-140 180T206 330Z"/>',
  snail:
    '<g fill="none" stroke="currentColor" stroke-width="46" stroke-linecap="round"><path d="M40 440h400q50-60 30-190M300 240a50 50 0 1 0-60 60 110 110 0 1 0-100-110 170 170 0 0 0 170 180 160 160 0 0 0 120-120"/></g>',
};

/** How the trade says an emblem; the rest are named as they are, hyphens apart. */
const SPOKEN: Record<string, string> = {
  grapes: "bunch of grapes",
  cog: "gear wheel",
  "quill-ink": "quill and inkwell",
  "ram-profile": "ram's head",
  "bear-head": "bear's head",
  "rabbit-head": "rabbit's head",
  "deer-head": "stag's head",
  "eagle-head": "eagle's head",
  "horse-head": "horse's head",
  "wolf-head": "wolf's head",
  "candle-light": "candle",
  "candle-flame": "candle",
  "lantern-flame": "lantern",
  "trophy-cup": "two-handled cup",
  plow: "plough",
  "wood-axe": "axe",
  gloves: "clasped hands",
  compass: "compass",
  waves: "three waves",
  "bear-face": "bear's face",
  cherry: "cherries",
  "skeleton-key": "ornamental key",
  sun: "sun with rays",
  "star-4": "four-pointed star",
  "star-5": "five-pointed star",
  "star-6": "six-pointed star",
  "star-8": "eight-pointed star",
  "shooner-sailboat": "schooner",
  "small-fishing-sailboat": "fishing smack",
  sailboat: "sailing boat",
  "canadian-goose": "swimming goose",
  "round-star": "rounded star",
  "flat-star": "flat star",
  "barbed-star": "interlaced star",
  "heraldic-sun": "sun in splendour",
  "striped-sun": "rising sun",
  "ringing-bell": "bell",
  "elven-castle": "three-towered castle",
  "fleur-de-lys": "fleur-de-lis",
  "trefoil-lily": "trefoil lily",
  "fluffy-trefoil": "triskele",
  "broadhead-arrow": "broad arrow",
  "shooting-star": "comet",
  "claw-hammer": "claw hammer",
  "flat-hammer": "mallet",
  "hammer-drop": "drop hammer",
  "old-lantern": "storm lantern",
  "shiny-apple": "apple",
  "stone-wheel": "millstone",
  "stone-bridge": "three-arched bridge",
  bridge: "gate arch",
  "big-gear": "gear wheel",
  "wing-cloak": "winged cloak",
  "visored-helm": "visored helmet",
  "sewing-string": "reel of thread",
  "sewing-needle": "threaded needle",
  "pentagram-rose": "compass rose",
  "rosa-shield": "shield with a star",
  "cross-shield": "shield with a cross",
  "griffin-symbol": "griffin",
  "griffin-shield": "shield with an eagle's head",
  "eagle-emblem": "spread eagle",
  "heart-wings": "winged heart",
  "mountain-cave": "hill with a cave",
  mountains: "three peaks",
  "double-fish": "two fishes",
  "scroll-quill": "quill and scroll",
  "trumpet-flag": "herald's trumpet",
  "three-keys": "three keys",
  "porcelain-vase": "long-necked vase",
  "vine-leaf": "vine leaf",
  "ginkgo-leaf": "fan leaf",
  "flower-emblem": "eight-petalled flower",
  "twirly-flower": "whirling flower",
  "arrow-flights": "sheaf of arrows",
  "bow-arrow": "bow and arrow",
  "guarded-tower": "tower with a watchman",
  "white-tower": "tower",
  "stone-tower": "masonry tower",
  "crenel-crown": "pointed crown",
  "jewel-crown": "open crown",
  "queen-crown": "crown of five points",
  "sharp-crown": "spiked crown",
  "imperial-crown": "closed crown",
  "teapot-leaves": "kettle and cup",
  "robin-hood-hat": "feathered cap",
  "beveled-star": "faceted star",
  "polar-star": "pole star",
  "seven-pointed-star": "seven-pointed star",
  "ship-wheel": "ship's wheel",
  "checked-shield": "quartered shield",
  "hunting-horn": "hunting horn in a hand",
  "wolf-howl": "howling wolf",
  "feathered-wing": "wing",
};

/** The drawing of an emblem on a 512 square, filled with the current colour. */
export function emblemDrawing(name: string): string {
  const drawn = DRAWN[name];
  if (drawn) return drawn;
  if (!icons) {
    const file = require.resolve("@iconify-json/game-icons/icons.json");
    icons = (JSON.parse(readFileSync(file, "utf8")) as { icons: Record<string, { body: string }> }).icons;
  }
  const icon = icons[name];
  if (!icon) throw new Error(`emblem: must be drawn here or in game-icons. Received "${name}".`);
  return icon.body;
}

/** True for the emblems that this folder draws itself. */
export function isDrawnHere(name: string): boolean {
  return name in DRAWN;
}

/** The emblem in words, e.g. `bear's head` is said `bear head`. */
export function sayEmblem(name: string): string {
  return SPOKEN[name] ?? name.replaceAll("-", " ");
}
