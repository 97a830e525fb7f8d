import { daysText } from '@/app/shop/_components/hours-text';
import { profileTemperatureC, type TemperatureProfile } from '@/lib/cure/temperature-profile';
import { temperatureIn } from '@/lib/units/convert';
import { minuteText } from '@/lib/units/format-instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { WEEKDAYS, type Weekday } from '@/lib/units/zoned-time';

export interface WeekDrawingProps {
  readonly profile: TemperatureProfile;
  readonly unit: TemperatureUnit;
}

interface Stretch {
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly temperatureC: number;
}

/** The usual week as seven bars of a day each; every stretch says its temperature. */
export function WeekDrawing({ profile, unit }: WeekDrawingProps) {
  return (
    <div className="grid gap-1.5">
      <ol className="grid gap-1.5">
        {WEEKDAYS.map((weekday) => (
          <li key={weekday} className="grid grid-cols-[2.5rem_1fr] items-center gap-2">
            <span className="text-sm font-semibold">{daysText([weekday])}</span>
            <span className="flex h-9 overflow-hidden rounded-sheet border border-line-strong">
              {stretches(profile, weekday).map((stretch) => (
                <span
                  key={stretch.fromMinute}
                  title={`${minuteText(stretch.fromMinute)} to ${minuteText(stretch.toMinute)}`}
                  className={`flex items-center justify-center overflow-hidden border-l border-line-strong text-xs whitespace-nowrap first:border-l-0 ${stretch.temperatureC > profile.otherwiseC ? 'bg-chart-fill font-semibold' : 'bg-sheet'}`}
                  style={{ width: `${((stretch.toMinute - stretch.fromMinute) / 1440) * 100}%` }}
                >
                  <span className="sr-only">
                    {minuteText(stretch.fromMinute)} to {minuteText(stretch.toMinute)}:{' '}
                  </span>
                  {Math.round(temperatureIn(unit, stretch.temperatureC))}°
                </span>
              ))}
            </span>
          </li>
        ))}
      </ol>
      <div aria-hidden="true" className="ml-12 flex justify-between text-xs text-ink-soft">
        {['0:00', '6:00', '12:00', '18:00', '24:00'].map((hour) => (
          <span key={hour}>{hour}</span>
        ))}
      </div>
    </div>
  );
}

function stretches(profile: TemperatureProfile, weekday: Weekday): Stretch[] {
  const edges = new Set([0, 1440, ...profile.periods.flatMap((period) => [period.fromMinute, period.toMinute])]);
  const minutes = [...edges].filter((minute) => minute <= 1440).sort((a, b) => a - b);
  const found: Stretch[] = [];
  for (const [index, fromMinute] of minutes.entries()) {
    const toMinute = minutes[index + 1];
    if (toMinute === undefined) break;
    const temperatureC = profileTemperatureC(profile, weekday, fromMinute);
    const last = found.at(-1);
    if (last !== undefined && last.temperatureC === temperatureC) found[found.length - 1] = { ...last, toMinute };
    else found.push({ fromMinute, toMinute, temperatureC });
  }
  return found;
}
