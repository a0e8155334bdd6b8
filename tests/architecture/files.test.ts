import { describe, expect, it } from "vitest";
import { secretsIn } from "./secrets.ts";
import { trackedFiles } from "./tracked-files.ts";

const files = trackedFiles();
const code = files.filter(({ path }) => /\.(ts|tsx|mjs)$/.test(path));

/** The house's own rooms and papers, then what tools insist on finding at the top. */
const TOP_LEVEL = new Set([
  ...["README.md", "DEVELOPERS.md", "package.json", "tsconfig.json", "LICENSE"],
  ...["app", "prisma", "ml", "scripts", "tests", "seed", "messages"],
  ...["package-lock.json", ".gitignore", ".npmrc", ".ci", "biome.json"],
  ...["next.config.ts", "postcss.config.mjs", "prisma.config.ts", "instrumentation.ts", "proxy.ts", "public"],
]);

/** Files whose default export a tool asks for. */
const MAY_EXPORT_DEFAULT =
  /^(app\/(.*\/)?(page|layout|error|not-found|loading|template|default|global-error|icon|opengraph-image|robots|sitemap|manifest)\.tsx?|app\/_web\/request-messages\.ts|[^/]+\.config\.(ts|mjs)|tests\/vitest\.config\.ts)$/;

/** Lines of a file of code; one that has to be longer is named here with its reason. */
const LONGEST = 300;
const LONGER: Readonly<Record<string, string>> = {};

describe("the layout", () => {
  it("has nothing at the top but the rooms and what tools insist on", () => {
    const top = new Set(files.map(({ path }) => path.split("/")[0] ?? path));
    expect([...top].filter((name) => !TOP_LEVEL.has(name))).toEqual([]);
  });

  it("names files in kebab case", () => {
    const odd = code.filter(({ path }) => {
      const name = path.split("/").at(-1) ?? path;
      return !/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z]+)*\.(ts|tsx|mjs)$/.test(name);
    });
    expect(odd.map(({ path }) => path)).toEqual([]);
  });

  it("has no drawer for odds and ends", () => {
    const drawer = /(^|\/)(utils?|helpers?|misc|common|[\w-]*(manager|service))(\/|\.tsx?$|\.mjs$)/i;
    expect(files.map(({ path }) => path).filter((path) => drawer.test(path))).toEqual([]);
  });
});

describe("the code", () => {
  it("has default exports only where a tool asks for one", () => {
    const offering = code.filter(
      ({ path, text }) => !MAY_EXPORT_DEFAULT.test(path) && /^export default\b/m.test(text() ?? ""),
    );
    expect(offering.map(({ path }) => path)).toEqual([]);
  });

  it(`has no file over ${LONGEST} lines, but those named with a reason`, () => {
    const long = code
      .map(({ path, text }) => ({ path, lines: (text() ?? "").split("\n").length }))
      .filter(({ path, lines }) => lines > LONGEST && LONGER[path] === undefined);
    expect(long.map(({ path, lines }) => `${path}: ${lines}`)).toEqual([]);
  });

  it("leaves nothing for later in a remark", () => {
    const remark = new RegExp(
      `\\b(${["TO", "FIX", "X", "HA"].map((a, i) => a + ["DO", "ME", "XX", "CK"][i]).join("|")})\\b`,
    );
    const found = files.filter(
      ({ path, text }) => !/package-lock|\.csv$/.test(path) && remark.test(text() ?? ""),
    );
    expect(found.map(({ path }) => path)).toEqual([]);
  });
});

describe("what is tracked", () => {
  it.each([
    ["a private key", `-----BEGIN ${"EC PRIVATE"} KEY-----`],
    ["a password in an address", `postgresql://me:${"hunter2"}@db/x`],
    ["a token", `token = "${"a1".repeat(12)}"`],
  ])("would be found out with %s", (_, text) => {
    expect(secretsIn(text)).not.toEqual([]);
  });

  it("holds no secret", () => {
    const found = files.flatMap(({ path, text }) => {
      if (path === "package-lock.json") return [];
      return secretsIn(text() ?? "").map((secret) => `${path}: ${secret}`);
    });
    expect(found).toEqual([]);
  });

  it("names no person's address", () => {
    // Reserved for examples by RFC 2606; "git@" stands before a host in clone addresses.
    const address =
      /\b[\w.+-]+@(?!(?:[\w-]+\.)*example(?:\.(?:com|org|net))?\b)[\w-]+\.(?:[\w-]+\.)*[a-z]{2,}\b/i;
    const found = files.flatMap(({ path, text }) => {
      if (path === "package-lock.json") return [];
      const hit = (text() ?? "").match(address)?.[0];
      return hit === undefined || /@\d/.test(hit) ? [] : [`${path}: ${hit}`];
    });
    expect(found).toEqual([]);
  });

  it("weighs less than 40 MB", () => {
    const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
    expect(bytes / 1e6).toBeLessThan(40);
  });
});
