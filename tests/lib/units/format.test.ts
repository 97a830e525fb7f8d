import { describe, expect, it } from 'vitest';
import { countdownText, durationText } from '@/lib/units/format-duration';
import { clockText, dateClockText, dateText, minuteText, weekdayClockText, whenText } from '@/lib/units/format-instant';
import {
  forceText,
  lengthText,
  massText,
  temperatureDifferenceText,
  temperatureText,
  volumeText,
  wireDiameterText,
} from '@/lib/units/format-quantity';

describe("quantities in the shop's units", () => {
  it.each([
    [31.75, '1 1/4"'],
    [1.984375, '5/64"'],
    [50.8, '2"'],
    [0, '0"'],
    [0.1, '0"'],
    [0.3, '1/64"'],
    [25.3, '1"'],
    [-3.175, '−1/8"'],
  ])('%d mm is %s', (lengthMm, text) => {
    expect(lengthText(lengthMm, 'inch')).toBe(text);
  });

  it('prints metric lengths to a tenth, wires to a hundredth of a mm or a thousandth of an inch', () => {
    expect(lengthText(32, 'mm')).toBe('32 mm');
    expect(lengthText(32.45, 'mm')).toBe('32.5 mm');
    expect(wireDiameterText(1.0414, 'inch')).toBe('.041"');
    expect(wireDiameterText(1.0414, 'mm')).toBe('1.04 mm');
    expect(wireDiameterText(25.4, 'inch')).toBe('1.000"');
  });

  it('prints temperatures, masses, forces and volumes', () => {
    expect(temperatureText(21.5, 'C')).toBe('21.5 °C');
    expect(temperatureText(21.5, 'F')).toBe('70.7 °F');
    expect(temperatureText(-0.04, 'C')).toBe('0.0 °C');
    expect(temperatureText(-5, 'C')).toBe('−5.0 °C');
    expect(temperatureDifferenceText(1.5, 'F')).toBe('2.7 °F');
    expect(temperatureDifferenceText(1.5, 'C')).toBe('1.5 °C');
    expect(massText(12.5, 'g')).toBe('12.5 g');
    expect(massText(12.5, 'oz')).toBe('0.44 oz');
    expect(forceText(53.378659, 'lbf')).toBe('12.0 lbf');
    expect(forceText(53.378659, 'N')).toBe('53 N');
    expect(volumeText(12.5)).toBe('12.5 mL');
  });

  it('lets neither NaN nor infinity reach a screen', () => {
    expect(() => lengthText(Number.NaN, 'mm')).toThrow(RangeError);
    expect(() => temperatureText(Number.POSITIVE_INFINITY, 'C')).toThrow(RangeError);
    expect(() => durationText(Number.NaN)).toThrow(RangeError);
    expect(() => countdownText(Number.NaN)).toThrow(RangeError);
  });
});

describe('lengths of time', () => {
  it.each([
    [0, '0 min'],
    [29_999, '0 min'],
    [45 * 60_000, '45 min'],
    [59.6 * 60_000, '1 h 00'],
    [125 * 60_000, '2 h 05'],
    [24 * 3_600_000, '1 d'],
    [76 * 3_600_000, '3 d 4 h'],
    [-125 * 60_000, '−2 h 05'],
    [-20_000, '0 min'],
  ])('%d ms is %s', (durationMs, text) => {
    expect(durationText(durationMs)).toBe(text);
  });

  it.each([
    [725_000, '12:05'],
    [724_001, '12:05'],
    [1, '0:01'],
    [0, '0:00'],
    [-500, '0:00'],
    [-30_000, '−0:30'],
    [3_725_000, '1:02:05'],
    [-3_725_000, '−1:02:05'],
  ])('a countdown with %d ms left shows %s', (remainingMs, text) => {
    expect(countdownText(remainingMs)).toBe(text);
  });
});

describe("instants on the shop's wall", () => {
  const zone = 'America/Chicago';
  const at = Date.parse('2026-03-13T00:40:00Z');

  it('prints the clock, the weekday and the date', () => {
    expect(clockText(at, zone)).toBe('19:40');
    expect(weekdayClockText(at, zone)).toBe('Thu 19:40');
    expect(dateText(at, zone)).toBe('Thu 12 Mar 2026');
    expect(dateClockText(at, zone)).toBe('Thu 12 Mar 2026 19:40');
    expect(minuteText(390)).toBe('06:30');
    expect(minuteText(1440)).toBe('24:00');
  });

  it('names the zone on days on which the clocks change', () => {
    expect(clockText(Date.parse('2026-03-08T07:59:59Z'), zone)).toBe('01:59 CST');
    expect(clockText(Date.parse('2026-03-08T08:00:00Z'), zone)).toBe('03:00 CDT');
    expect(clockText(Date.parse('2026-03-29T12:00:00Z'), 'Europe/London')).toBe('13:00 BST');
    expect(clockText(Date.parse('2026-03-29T12:00:00Z'), 'Asia/Kolkata')).toBe('17:30');
  });

  it.each([
    ['2026-03-13T02:00:00Z', '19:40'],
    ['2026-03-10T02:00:00Z', 'Thu 19:40'],
    ['2026-03-19T02:00:00Z', 'Thu 19:40'],
    ['2026-03-20T02:00:00Z', 'Thu 12 Mar 19:40'],
    ['2026-02-01T02:00:00Z', 'Thu 12 Mar 19:40'],
    ['2025-12-01T02:00:00Z', 'Thu 12 Mar 2026 19:40'],
  ])('read at %s it is %s', (now, text) => {
    expect(whenText(at, Date.parse(now), zone)).toBe(text);
  });
});
