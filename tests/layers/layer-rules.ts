import type { IForbiddenRuleType } from 'dependency-cruiser';

/** Folders of lib, lowest rung first. A folder imports from lower rungs and from itself, never from its own rung. */
export const RUNGS = [
  ['units'],
  ['statistics', 'geometry', 'materials'],
  ['strength', 'cure', 'mixing', 'bom'],
  ['batch', 'prepare', 'pulltest', 'schedule', 'spec', 'stock'],
  ['contracts', 'exchange'],
] as const;

const all = RUNGS.flat();

function rungRules(): IForbiddenRuleType[] {
  return RUNGS.flatMap((rung, height) =>
    rung.map((folder): IForbiddenRuleType => {
      const allowed = [folder, ...RUNGS.slice(0, height).flat()];
      const barred = all.filter((other) => !allowed.includes(other));
      return {
        name: `lib/${folder} imports lower rungs only`,
        severity: 'error',
        from: { path: `^lib/${folder}/` },
        to: { path: `^lib/(${barred.join('|')})/` },
      };
    }),
  );
}

/** Packages that lib may use: arithmetic of dates, zod in contracts only, reading of CSV in exchange only. */
const LIB_PACKAGES: readonly (readonly [folder: string, packages: string])[] = [
  ['units', 'date-fns|@date-fns/tz'],
  ['contracts', 'zod'],
  ['exchange', 'csv-parse|@date-fns/tz'],
];

function packageRules(): IForbiddenRuleType[] {
  return all.map((folder) => {
    const allowed = LIB_PACKAGES.filter(([owner]) => owner === folder).map(([, packages]) => packages);
    return {
      name: `lib/${folder} uses no other packages`,
      severity: 'error',
      from: { path: `^lib/${folder}/` },
      to: {
        path: 'node_modules/',
        ...(allowed.length > 0 ? { pathNot: `node_modules/(@types/)?(${allowed.join('|')})/` } : {}),
      },
    };
  });
}

/** app -> prisma -> lib, the rungs of lib, and no circles. */
export const FORBIDDEN: IForbiddenRuleType[] = [
  {
    name: 'lib knows neither prisma nor app',
    severity: 'error',
    from: { path: '^lib/' },
    to: { path: '^(app|prisma|tests)/' },
  },
  {
    name: 'lib touches neither files nor the system',
    severity: 'error',
    from: { path: '^lib/' },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: 'prisma does not know app',
    severity: 'error',
    from: { path: '^prisma/' },
    to: { path: '^(app|tests)/|node_modules/(react|react-dom)/' },
  },
  { name: 'the app does not know its tests', severity: 'error', from: { path: '^app/' }, to: { path: '^tests/' } },
  {
    name: 'only prisma/client.ts picks a generated client',
    severity: 'error',
    from: { path: '^app/' },
    to: { path: '^prisma/generated/' },
  },
  { name: 'no circles', severity: 'error', from: {}, to: { circular: true } },
  { name: 'every import leads somewhere', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ...rungRules(),
  ...packageRules(),
];
