import { expect, test } from 'vitest';
import { acceptance } from '@/lib/pulltest/acceptance';
import { calibrationDraft } from '@/lib/pulltest/calibration';
import { conclusion } from '@/lib/pulltest/conclusion';
import { conditionComparisons } from '@/lib/pulltest/condition-comparison';
import { nextTests } from '@/lib/pulltest/next-test';
import { type PullAnalysis, pullAnalyses } from '@/lib/pulltest/pull-analysis';
import { PULL_MODES } from '@/lib/pulltest/pull-mode';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import type { SeriesAnalysis } from '@/lib/pulltest/series-analysis';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { wordsText } from '@/lib/units/quantity';
import { PLAIN_PULL } from './make-series';

/*
 * Random tables of pulls, most of them with something wrong: one reading, all equal, nothing but "at least", zeros, one
 * depth, absent mixes, huge and tiny loads, loads and depths that are no numbers. Nothing may come out that is not a
 * number, no strength below zero, and no lower value where its conditions do not hold.
 */
const TABLES = process.env.SOAK === '1' ? 50_000 : 1_500;
const INCH_LBF = { lengthUnit: 'inch', forceUnit: 'lbf', massUnit: 'g', temperatureUnit: 'F' } as const;
const NAMES = { mix: (id: string) => `mix ${id}`, pull: (id: string) => id, pieces: () => null };

test(`${TABLES} random tables`, { timeout: 3_600_000 }, () => {
  const random = seededRandom(2026);
  const counts = { claims: 0, line: 0, levels: 0, refused: new Map<string, number>() };
  for (let i = 0; i < TABLES; i++) {
    const records = randomTable(random);
    const goal = {
      demandN: random() < 0.8 ? 10 ** (4 * random()) : null,
      depthMm: random() < 0.3 ? 40 * random() : null,
      stepMm: 25.4 / 16,
      certainty: { content: 0.95, confidence: random() < 0.5 ? 0.75 : 0.95 },
      seed: i,
    };
    const question = random() < 0.5 ? 'anchorage' : 'bond';
    for (const analysis of pullAnalyses(records, question, goal)) {
      for (const one of [analysis.answer, analysis.withExcluded]) {
        if (one !== null) checkAnalysis(one, analysis, i);
      }
      const { lower } = analysis.answer;
      if (lower.ok) {
        counts.claims += 1;
        counts[lower.model.kind] += 1;
      } else counts.refused.set(lower.code, (counts.refused.get(lower.code) ?? 0) + 1);
      for (const { words } of [...conclusion(analysis, goal, NAMES), ...nextTests(analysis, goal, NAMES)]) {
        const text = wordsText(words, INCH_LBF);
        if (/NaN|undefined|Infinity|null/.test(text)) throw new Error(`table ${i}: ${text}`);
      }
      calibrationDraft(analysis.pulls);
    }
    noBadNumber(conditionComparisons(records, question), `table ${i} conditions`);
    noBadNumber(acceptanceOf(records), `table ${i} acceptance`);
  }
  const refused = [...counts.refused].map(([code, count]) => `${code} ${count}`).join(', ');
  console.log(
    `fuzz: ${TABLES} tables, ${counts.claims} lower values (${counts.line} line, ${counts.levels} levels), refused: ${refused}`,
  );
  expect(counts.claims).toBeGreaterThan(TABLES / 20);
  expect(counts.refused.size).toBeGreaterThan(7);
});

function checkAnalysis(one: SeriesAnalysis, analysis: PullAnalysis, table: number): void {
  const { lower, curve, least, atDepth, mixes } = one;
  noBadNumber(one, `table ${table}`);
  for (const point of curve) {
    if (!(point.lowerN > 0 && point.lowerN < point.fittedN)) throw new Error(`table ${table}: lower value off`);
  }
  for (const effect of mixes?.effects ?? []) {
    if (effect.p !== null && !(effect.p >= 0 && effect.p <= 1)) throw new Error(`table ${table}: p ${effect.p}`);
  }
  if (!lower.ok) {
    if (curve.length > 0 || least !== null || atDepth !== null)
      throw new Error(`table ${table}: a claim without a model`);
    return;
  }
  if (one !== analysis.answer) return;
  const counted = analysis.pulls.filter(({ use }) => use.kind === 'exact' || use.kind === 'at-least');
  const exact = counted.filter(({ use }) => use.kind === 'exact');
  const perMix = [...new Set(counted.map(({ record }) => record.mixId))].map(
    (id) => counted.filter(({ record }) => record.mixId === id).length,
  );
  const hasMixes =
    perMix.filter((count) => count >= 2).length >= 3 || (perMix.length >= 3 && perMix.every((c) => c === 1));
  const isAllowed =
    hasMixes &&
    exact.length >= 3 &&
    2 * (counted.length - exact.length) <= counted.length &&
    !analysis.pulls.some(({ use }) => use.kind === 'fell-out');
  if (!isAllowed) throw new Error(`table ${table}: a lower value where none can be stated`);
}

/** Throws at the first number that is none, anywhere but in the records themselves. */
function noBadNumber(value: unknown, where: string): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${where}: ${value}`);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) if (key !== 'record') noBadNumber(inner, `${where}.${key}`);
}

function acceptanceOf(records: readonly PullRecord[]) {
  const pulls = records.flatMap(({ mixId, loadN, isLowerBound }) =>
    loadN !== null && loadN >= 0 && Number.isFinite(loadN) ? [{ mixId, loadN, isLowerBound }] : [],
  );
  const known = records.length % 2 === 0 ? { logSd: 0.15, freedom: 8 } : null;
  return acceptance({ pulls, mixIds: ['A', 'Z'], demandN: 200, certainty: { content: 0.95, confidence: 0.75 }, known });
}

function randomTable(random: () => number): PullRecord[] {
  const pick = <T>(values: readonly [T, ...T[]]): T => values[Math.floor(random() * values.length)] ?? values[0];
  const depths = Array.from({ length: 1 + Math.floor(6 * random()) }, (_, i) => (i + 1) * pick([3.175, 6.35, 5]));
  const mixes = Math.floor(7 * random());
  const conditions = random() < 0.2 ? ['poplar', 'cedar'] : ['poplar'];
  const holes = pick([0, 0, 0.15, 0.5, 0.9]);
  const bounds = pick([0, 0, 0.2, 0.6, 1]);
  const style = pick(['plain', 'plain', 'equal', 'coarse', 'falling', 'wild', 'exact-line', 'steep']);
  const odd = random() < 0.3 ? 0.1 : 0;
  const scatter = pick([0, 0.05, 0.2, 1]);
  const records: PullRecord[] = [];
  for (const condition of conditions) {
    for (let mix = 0; mix < mixes; mix++) {
      const effect = scatter * (random() - 0.5);
      for (const depth of depths) {
        if (random() < holes) continue;
        const id = `${condition}-${mix}-${records.length}`;
        const noisy = 20 * depth * Math.exp(effect + scatter * (random() - 0.5));
        const load = loadOf(style, noisy, depth, random);
        const isOdd = random() < odd;
        records.push({
          ...PLAIN_PULL,
          id,
          specimenId: random() < 0.03 && records.length > 0 ? (records.at(-1)?.specimenId ?? id) : id,
          mixId: 'ABCDEFG'.charAt(mix),
          condition,
          embedmentMm: isOdd ? pick([0, Number.NaN, -3, 1e9, depth + 0.01]) : depth,
          loadN: isOdd ? pick([null, 0, -5, Number.NaN, Number.POSITIVE_INFINITY, 1e-300, 1e300, load]) : load,
          isLowerBound: random() < bounds,
          mode: random() < 0.9 ? 'wood-sleeve' : (PULL_MODES[Math.floor(random() * PULL_MODES.length)] ?? 'held'),
          leftDamage: random() < 0.05,
          angleDeg: random() < 0.05 ? pick([5, 45, Number.NaN]) : 0,
          releasedAt: random() < 0.05 ? PLAIN_PULL.pulledAt + 1 : random() < 0.1 ? null : PLAIN_PULL.releasedAt,
          scale: random() < 0.1 ? null : PLAIN_PULL.scale,
          exclusion: random() < 0.05 ? { reason: 'fixture-slipped', note: '', personId: null, at: 0 } : null,
        });
      }
    }
  }
  return records;
}

function loadOf(style: string, noisy: number, depth: number, random: () => number): number {
  switch (style) {
    case 'equal':
      return 100;
    case 'coarse':
      return Math.max(1, Math.round(noisy / 50)) * 50;
    case 'falling':
      return 20_000 / noisy;
    case 'wild':
      return 10 ** (6 * random() - 1.5);
    case 'exact-line':
      return 20 * depth;
    case 'steep':
      return noisy ** 3 / 1e4;
    default:
      return noisy;
  }
}
