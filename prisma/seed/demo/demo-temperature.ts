import type { TemperatureProfile } from '@/lib/cure/temperature-profile';
import { profileTemperatureC } from '@/lib/cure/temperature-profile';
import type { Instant } from '@/lib/units/instant';
import { HOUR_MS, MINUTE_MS } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { type DemoTimes, daysAgo } from './demo-times';
import { seededNoise } from './seeded-noise';

export interface DemoReading {
  readonly at: Instant;
  readonly temperatureC: number;
  readonly humidityPct: number;
}

/** Warm in the evening and on Saturday, when somebody is at the bench; otherwise just heated. */
export const DEMO_PROFILE: TemperatureProfile = {
  otherwiseC: 15.5,
  periods: [
    { weekdays: [1, 2, 3, 4, 5, 6, 7], fromMinute: 18 * 60, toMinute: 22 * 60, temperatureC: 20.5 },
    { weekdays: [6], fromMinute: 8 * 60, toMinute: 15 * 60, temperatureC: 20.5 },
  ],
};

const STEP_MS = 15 * MINUTE_MS;
const DAYS = 14;
// How fast the room follows its heater and the winter outside, h, and how cold that is, degC. Chosen.
const HEATING_H = 0.8;
const COOLING_H = 5;
const OUTSIDE_C = 2;
const SEED = 20_260_207;

/**
 * What the logger on the bench wrote: two weeks, every 15 minutes up to now, with two nights on which the heater was
 * off (one long past, one after the last glue-up) and a morning on which the logger had no battery. Invented: a room
 * of one time constant that follows the profile, with seeded noise; relative humidity from a constant dew point.
 */
export function demoReadings(times: DemoTimes): readonly DemoReading[] {
  const instants = demoInstants(times.nowAt);
  const noise = seededNoise(SEED, instants.length * 2);
  const readings: DemoReading[] = [];
  let roomC = DEMO_PROFILE.otherwiseC;
  for (const [index, at] of instants.entries()) {
    roomC = nextRoomC(times, at, roomC);
    if (isGap(times, at)) continue;
    const temperatureC = roomC + 0.25 * (noise[index] ?? 0);
    const dewPointC = 6.5 + 1.5 * Math.sin((2 * Math.PI * index) / (4 * 60)) + (noise[instants.length + index] ?? 0);
    readings.push({
      at,
      temperatureC: Math.round(temperatureC * 10) / 10,
      humidityPct: Math.round(Math.min(88, relativeHumidityPct(temperatureC, dewPointC))),
    });
  }
  return readings;
}

/** Every quarter of an hour of the two weeks up to `nowAt`: the instants at which the demo has a reading, or its gap. */
export function demoInstants(nowAt: Instant): readonly Instant[] {
  const lastAt = Math.floor(nowAt / STEP_MS) * STEP_MS;
  const count = DAYS * 24 * 4;
  return Array.from({ length: count }, (_, index) => lastAt - (count - 1 - index) * STEP_MS);
}

function nextRoomC(times: DemoTimes, at: Instant, roomC: number): number {
  if (isHeaterOff(times, at)) return approach(roomC, OUTSIDE_C, COOLING_H);
  const { weekday, minuteOfDay } = wallTimeAt(at, times.zone);
  const setpointC = profileTemperatureC(DEMO_PROFILE, weekday, minuteOfDay);
  return setpointC > roomC ? approach(roomC, setpointC, HEATING_H) : approach(roomC, setpointC, COOLING_H);
}

function approach(fromC: number, toC: number, timeConstantH: number): number {
  return toC + (fromC - toC) * Math.exp(-STEP_MS / (timeConstantH * HOUR_MS));
}

function isHeaterOff(times: DemoTimes, at: Instant): boolean {
  return [11, times.glueUpDaysAgo].some(
    (days) => at >= daysAgo(times, days, '22:15') && at < daysAgo(times, days - 1, '07:30'),
  );
}

function isGap(times: DemoTimes, at: Instant): boolean {
  return at >= daysAgo(times, 4, '09:10') && at < daysAgo(times, 4, '12:40');
}

/** Magnus formula over water with the coefficients 17.62 and 243.12 degC. From memory. */
function relativeHumidityPct(airC: number, dewPointC: number): number {
  const exponent = (celsius: number) => (17.62 * celsius) / (243.12 + celsius);
  return 100 * Math.exp(exponent(Math.min(dewPointC, airC)) - exponent(airC));
}
