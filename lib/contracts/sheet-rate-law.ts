import { COMMON_ACTIVATION_ENERGY_KJ_PER_MOL, fitActivationEnergy } from '@/lib/cure/activation-energy';
import type { FigureSource, RateLaw } from '@/lib/cure/adhesive-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { SheetText } from './sheet-text';

export type SheetRateLaw =
  | { readonly ok: true; readonly law: RateLaw; readonly source: FigureSource }
  | { readonly ok: false; readonly message: string };

/** How the hours follow temperature, by the way the maker chose, and where that comes from. */
export function sheetRateLaw({ rate, source }: SheetText, { temperatureUnit }: UnitChoice): SheetRateLaw {
  switch (rate.kind) {
    case 'two-temperatures': {
      const first = { temperatureC: rate.firstC, minutes: rate.firstTime };
      const second = { temperatureC: rate.secondC, minutes: rate.secondTime };
      const fit = fitActivationEnergy(first, second);
      if (!fit.ok) return { ok: false, message: FIT_REFUSALS[fit.code] };
      const text = `${source.text}: the same step takes ${stepText(first)} and ${stepText(second)}, which gives ${fit.kjPerMol.toFixed(1)} kJ/mol; 5 either way are chosen.`;
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: fit.box },
        source: { kind: source.kind, text },
      };
    }
    case 'common':
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: COMMON_ACTIVATION_ENERGY_KJ_PER_MOL },
        source: {
          kind: 'published',
          text: 'The sheet gives one temperature. Amine-cured epoxies lie between 44 and 67 kJ/mol (Thermochim. Acta 447 (2006) 167-177; Barral et al., J. Appl. Polym. Sci. 56 (1995) 1029-1037); the box of 45 to 65 is chosen.',
        },
      };
    case 'own':
      return {
        ok: true,
        law: { kind: 'arrhenius', activationEnergyKjPerMol: { low: rate.low, central: rate.central, high: rate.high } },
        source,
      };
    case 'doubling': {
      // Typed as a difference in the shop's degrees.
      const perDegree = temperatureUnit === 'F' ? 1 / 1.8 : 1;
      const doublingC = {
        low: rate.low * perDegree,
        central: rate.central * perDegree,
        high: rate.high * perDegree,
      };
      return { ok: true, law: { kind: 'doubling', doublingC }, source };
    }
    case 'plain-hours':
      return { ok: true, law: { kind: 'plain-hours' }, source };
  }
}

const FIT_REFUSALS = {
  'not-positive': 'Both times must be above nothing.',
  'same-temperature': 'Give two different temperatures.',
  'not-faster-when-warmer': 'The warmer one must be the faster one. Look whether the two times are swapped.',
  impossible:
    'No cure changes that much or that little between these temperatures. Look whether both times are of the same step.',
} as const;

function stepText({ temperatureC, minutes }: { readonly temperatureC: number; readonly minutes: number }): string {
  const time = minutes < 120 ? `${Number(minutes.toFixed(1))} min` : `${Number((minutes / 60).toFixed(2))} h`;
  return `${time} at ${Number(temperatureC.toFixed(1))} degC`;
}
