import { cruise, type ICruiseResult } from "dependency-cruiser";
import extractTsConfig from "dependency-cruiser/config-utl/extract-ts-config";
import { RULES } from "./rooms.ts";

/**
 * Reads every import of the folders, those of types alone as well, and judges them.
 * @param baseDir a checkout's top folder
 * @returns one line for each import that a rule refuses: `rule: from -> to`
 */
export async function refusedImports(
  baseDir: string,
  folders: readonly string[],
): Promise<readonly string[]> {
  const { output } = await cruise(
    [...folders],
    {
      baseDir,
      ruleSet: RULES,
      validate: true,
      tsPreCompilationDeps: true,
      doNotFollow: { path: ["node_modules", "^app/_adapters/generated/"] },
      exclude: { path: ["^ml/train/.*/node_modules"] },
      enhancedResolveOptions: {
        exportsFields: ["exports"],
        conditionNames: ["import", "require", "node", "default", "types"],
        extensions: [".ts", ".tsx", ".d.ts", ".mjs", ".js", ".json"],
      },
    },
    {},
    { tsConfig: extractTsConfig(`${baseDir}/tsconfig.json`) },
  );
  return (output as ICruiseResult).summary.violations.map(
    ({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`,
  );
}
