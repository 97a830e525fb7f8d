import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** What a reader of the summary should know: what was skipped and why, what failed. */
  readonly notes: readonly string[];
}

const vitestSchema = z.object({
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      message: z.string().optional(),
      assertionResults: z.array(z.object({ fullName: z.string(), status: z.string() })),
    }),
  ),
});

/** Counts of a Vitest JSON report. A run that failed without saying which test counts as one failure. */
export function countVitest(file: string, exitCode: number): Counts {
  const report = readReport(file, vitestSchema);
  if (report === null) return unfinished(exitCode);
  const tests = report.testResults.flatMap((suite) => suite.assertionResults);
  const failed = tests.filter((test) => test.status === 'failed');
  const skipped = tests.filter((test) => ['skipped', 'pending', 'todo', 'disabled'].includes(test.status));
  // A file that could not even be loaded has no tests to fail.
  const broken = report.testResults.filter(
    (suite) => suite.status === 'failed' && suite.assertionResults.every((test) => test.status !== 'failed'),
  );
  return withExitCode(exitCode, {
    passed: tests.filter((test) => test.status === 'passed').length,
    failed: failed.length + broken.length,
    skipped: skipped.length,
    notes: [
      ...failed.map((test) => `failed: ${test.fullName}`),
      ...broken.map((suite) => `failed: ${suite.name}: ${(suite.message ?? '').split('\n')[0]}`),
      ...skipped.map((test) => `skipped: ${test.fullName}`),
    ],
  });
}

interface PlaywrightSuite {
  title: string;
  suites?: PlaywrightSuite[] | undefined;
  specs?: PlaywrightSpec[] | undefined;
}
interface PlaywrightSpec {
  title: string;
  tests: { status: string; annotations: { type: string; description?: string | undefined }[] }[];
}

const suiteSchema: z.ZodType<PlaywrightSuite> = z.lazy(() =>
  z.object({
    title: z.string(),
    suites: z.array(suiteSchema).optional(),
    specs: z
      .array(
        z.object({
          title: z.string(),
          tests: z.array(
            z.object({
              status: z.string(),
              annotations: z.array(z.object({ type: z.string(), description: z.string().optional() })),
            }),
          ),
        }),
      )
      .optional(),
  }),
);
const playwrightSchema = z.object({
  suites: z.array(suiteSchema),
  errors: z.array(z.object({ message: z.string().optional() })),
});

/** Counts of a Playwright JSON report, with the reason of each skip where the test gives one. */
export function countPlaywright(file: string, exitCode: number): Counts {
  const report = readReport(file, playwrightSchema);
  if (report === null) return unfinished(exitCode);
  const tests = report.suites.flatMap(testsOf);
  const failed = tests.filter((test) => test.status === 'unexpected' || test.status === 'flaky');
  const skipped = tests.filter((test) => test.status === 'skipped');
  return withExitCode(exitCode, {
    passed: tests.filter((test) => test.status === 'expected').length,
    failed: failed.length + report.errors.length,
    skipped: skipped.length,
    notes: [
      ...failed.map((test) => `failed: ${test.title}`),
      ...report.errors.map((error) => `failed: ${(error.message ?? 'unknown error').split('\n')[0]}`),
      ...skipped.map((test) => `skipped: ${test.title}${test.reason}`),
    ],
  });
}

function testsOf(suite: PlaywrightSuite): { title: string; status: string; reason: string }[] {
  const own = (suite.specs ?? []).flatMap((spec) =>
    spec.tests.map(({ status, annotations }) => {
      const reason = annotations.find((annotation) => annotation.type === 'skip')?.description;
      return { title: `${suite.title} > ${spec.title}`, status, reason: reason === undefined ? '' : `: ${reason}` };
    }),
  );
  return [...own, ...(suite.suites ?? []).flatMap(testsOf)];
}

function readReport<T>(file: string, schema: z.ZodType<T>): T | null {
  if (!existsSync(file)) return null;
  return schema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

function unfinished(exitCode: number): Counts {
  return { passed: 0, failed: 1, skipped: 0, notes: [`failed: it ended with code ${exitCode} and no report`] };
}

/** A run that ends badly is a failure, whatever its report counts. */
function withExitCode(exitCode: number, counts: Counts): Counts {
  if (exitCode === 0 || counts.failed > 0) return counts;
  return { ...counts, failed: 1, notes: [...counts.notes, `failed: it ended with code ${exitCode}`] };
}
