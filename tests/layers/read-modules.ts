import { existsSync } from 'node:fs';
import path from 'node:path';
import type { ICruiseResult, IForbiddenRuleType } from 'dependency-cruiser';
import { cruise } from 'dependency-cruiser';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';

const TOP_FOLDERS = ['app', 'prisma', 'lib'];

/** Reads the imports of a project folder and holds them against rules. Throws when it read no module at all. */
export async function readModules(root: string, forbidden: readonly IForbiddenRuleType[]): Promise<ICruiseResult> {
  const tsConfig = path.resolve('tsconfig.json');
  const folders = TOP_FOLDERS.filter((folder) => existsSync(path.join(root, folder)));
  const { output } = await cruise(
    folders,
    {
      baseDir: root,
      ruleSet: { forbidden: [...forbidden] },
      validate: true,
      doNotFollow: { path: ['node_modules', '^prisma/generated/'] },
      exclude: { path: ['^\\.next/'] },
      tsPreCompilationDeps: true, // imports of types count too
      tsConfig: { fileName: tsConfig },
    },
    { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
    { tsConfig: extractTSConfig(tsConfig) },
  );
  if (typeof output === 'string') throw new Error('dependency-cruiser answered with text');
  if (output.summary.totalCruised === 0) throw new Error(`no module was read in ${root}`);
  return output;
}

/** The broken rules, one line each. */
export function violationLines({ summary }: ICruiseResult): string[] {
  return summary.violations.map((found) => `${found.rule.name}: ${found.from} -> ${found.to}`).sort();
}
