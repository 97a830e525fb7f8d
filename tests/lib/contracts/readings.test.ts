import { describe, expect, it } from 'vitest';
import { MOST_READINGS, parseReadings } from '@/lib/contracts/readings';

const AT = Date.UTC(2026, 2, 10, 18, 15);

function issuePaths(body: unknown): string[] {
  const parsed = parseReadings(body);
  return parsed.ok ? [] : parsed.issues.map(({ path }) => path);
}

describe('readings as a logger sends them', () => {
  it.each([
    ['UTC', '2026-03-10T18:15:00Z'],
    ['an offset', '2026-03-10T13:15:00-05:00'],
    ['a fraction', '2026-03-10T18:15:00.000Z'],
    ['Unix seconds', AT / 1000],
    ['Unix milliseconds', AT],
  ])('takes %s', (_name, at) => {
    expect(parseReadings({ at, temperatureC: 17.5 })).toEqual({
      ok: true,
      readings: [{ at: AT, temperatureC: 17.5, humidityPct: null, sensor: null }],
    });
  });

  it('takes degF, humidity and a sensor, alone or in a list', () => {
    const sent = { at: AT, temperatureF: 69.8, humidityPct: 48, sensor: 'Bench' };
    const reading = { at: AT, temperatureC: 21, humidityPct: 48, sensor: 'Bench' };
    expect(parseReadings([sent, sent])).toEqual({ ok: true, readings: [reading, reading] });
  });

  it('names everything that is wrong, each with its place', () => {
    const body = [
      { at: '2026-03-10 18:15', temperatureC: 17.5 },
      { at: AT, temperatureC: 17.5, temperatureF: 63.5 },
      { at: AT },
      { at: AT, temperatureC: 120 },
      { at: AT, temperatureC: '17.5' },
      { at: AT, temperatureC: 17.5, humidityPct: 101 },
      { at: AT, temperatureC: 17.5, sensor: 'a\u0000b' },
      { at: -1, temperatureC: 17.5 },
    ];
    expect(issuePaths(body)).toEqual([
      '0.at',
      '1.temperatureC',
      '2.temperatureC',
      '3.temperatureC',
      '4.temperatureC',
      '5.humidityPct',
      '6.sensor',
      '7.at',
    ]);
  });

  it.each([
    ['unknown keys', { at: AT, temperatureC: 17.5, volts: 3 }],
    ['nothing', null],
    ['a text', 'warm'],
    ['an empty list', []],
    ['a list that is too long', Array.from({ length: MOST_READINGS + 1 }, () => ({ at: AT, temperatureC: 1 }))],
    ['a date that does not exist', { at: '2026-02-30T18:15:00Z', temperatureC: 17.5 }],
    ['a time without a zone', { at: '2026-03-10T18:15:00', temperatureC: 17.5 }],
  ])('refuses %s', (_name, body) => {
    expect(parseReadings(body).ok).toBe(false);
  });
});
