import { builtinModules } from "node:module";
import type { IFlattenedRuleSet, IForbiddenRuleType } from "dependency-cruiser";

/** Paths are seen from the checkout's top; a package is where it lies, a part of Node goes by its bare name. */
const packages = (...names: string[]) => names.map((name) => `(^|/)node_modules/(@types/)?${name}/`);
const NODE = `^(node:)?(${builtinModules.map((name) => name.replace(/^node:/, "")).join("|")})$`;
const REACT = packages(
  "react",
  "react-dom",
  "react-aria-components",
  "react-aria",
  "react-stately",
  "react-image-crop",
  "react-zoom-pan-pinch",
);
const LANGUAGE = [...packages("next-intl"), "^messages/"];
const FONTS = packages("@fontsource[^/]*/[^/]+");
const STYLES = "\\.css$";

type Room = {
  readonly room: string;
  /** The files of the room. */
  readonly files: string;
  readonly except?: string;
  /** Everything that these files may import. */
  readonly may: readonly string[];
};

const CORE = "^app/_core/";
const PORTS = "^app/_usecases/ports(\\.ts$|/)";
/** Steps that several use cases take, or one that is too long for one file: the use cases are beside the folders. */
const STEPS = "^app/_usecases/(look-up|members|object-files|recording|review)/";
/** The one place where the rooms that decide meet those that act. */
const WIRING = "^app/_web/live(/|\\.ts$)";
/** The one exception of _core: a package parses EDTF, and this file alone knows it. */
const EDTF_PARSER = "^app/_core/dates/edtf-syntax\\.ts$";

/** Who may import whom: the table of the house. */
const ROOMS: readonly Room[] = [
  { room: "_core", files: CORE, except: EDTF_PARSER, may: [CORE] },
  { room: "_core/dates/edtf-syntax.ts", files: EDTF_PARSER, may: [CORE, ...packages("@edtf-ts/core")] },
  { room: "_usecases", files: "^app/_usecases/", may: [CORE, PORTS, STEPS] },
  {
    room: "_web",
    files: "^app/_web/",
    except: WIRING,
    may: [
      CORE,
      "^app/_usecases/",
      "^app/_web/",
      NODE,
      ...LANGUAGE,
      ...packages("zod", "next", "next-auth", "react"),
    ],
  },
  {
    room: "_web/live.ts",
    files: WIRING,
    may: [
      CORE,
      "^app/_usecases/",
      "^app/_web/",
      "^app/_adapters/(?!generated)",
      NODE,
      ...packages("zod", "next"),
    ],
  },
  {
    room: "pages and route handlers",
    files: "^app/([(]|api/|[^/_]+$)",
    may: [
      CORE,
      "^app/_web/",
      "^app/_ui/",
      "^app/[(]",
      ...LANGUAGE,
      ...FONTS,
      STYLES,
      ...REACT,
      ...packages("next"),
    ],
  },
  {
    room: "_ui",
    files: "^app/_ui/",
    may: [CORE, "^app/_ui/", ...LANGUAGE, ...FONTS, STYLES, ...REACT, ...packages("next", "diff")],
  },
  {
    room: "ml",
    files: "^ml/",
    except: "^ml/((train|evaluate)/|worker\\.mjs$)",
    may: [
      "^ml/",
      NODE,
      ...packages("sharp", "onnxruntime-node", "onnxruntime-common", "@techstark/opencv-js"),
    ],
  },
  { room: "ml/worker.mjs", files: "^ml/worker\\.mjs$", may: ["^ml/", ...packages("tsx")] },
  {
    room: "ml/evaluate",
    files: "^ml/evaluate/",
    // Beside what the model needs: a reader of archives, a baseline to compare with, and the rules by which a look-up
    // makes its answer of similarities, since it is the shipped answer that is measured.
    may: ["^ml/", "^app/_core/", NODE, ...packages("sharp", "onnxruntime-node", "fflate", "sharp-phash")],
  },
];

const allowLists = ROOMS.map(
  ({ room, files, except, may }): IForbiddenRuleType => ({
    name: `${room} imports only what its room may`,
    severity: "error",
    from: { path: files, ...(except === undefined ? {} : { pathNot: except }) },
    to: { pathNot: [...may] },
  }),
);

/** Rooms with no closed list: what they must never import. */
const refusals: readonly IForbiddenRuleType[] = [
  {
    name: "_adapters never import use cases, Next or React",
    severity: "error",
    from: { path: "^app/_adapters/" },
    to: {
      path: [
        "^app/_usecases/",
        "^app/_(web|ui)/",
        "^app/[(]",
        "^app/api/",
        ...packages("next[^/]*", "react[^/]*", "zod"),
      ],
      pathNot: PORTS,
    },
  },
  {
    name: "_adapters know of use cases only the types of the ports",
    severity: "error",
    from: { path: "^app/_adapters/" },
    to: { path: PORTS, dependencyTypesNot: ["type-only"] },
  },
  {
    name: "only _adapters know the database",
    severity: "error",
    from: {
      pathNot: ["^app/_adapters/", "^scripts/throw-away-database\\.ts$", "^tests/", "(^|/)node_modules/"],
    },
    to: { path: ["^app/_adapters/generated/", ...packages("@prisma/[^/]+", "pg", "@electric-sql/[^/]+")] },
  },
  {
    name: "nothing that is served imports scripts, seed or tests",
    severity: "error",
    from: { path: "^(app|ml)/" },
    to: { path: "^(scripts|seed|tests)/" },
  },
  {
    // ml/train has a package.json of its own: its packages are installed by whoever trains.
    name: "an import leads somewhere",
    severity: "error",
    from: { pathNot: "^ml/train/" },
    to: { couldNotResolve: true },
  },
  {
    name: "no file imports itself by a detour",
    severity: "error",
    from: { pathNot: "^app/_adapters/generated/" },
    to: { circular: true },
  },
];

export const RULES: IFlattenedRuleSet = { forbidden: [...allowLists, ...refusals] };
