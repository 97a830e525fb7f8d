import { milestoneText } from '@/lib/batch/describe-status';
import type { AdhesiveSheet, FigureSource, Milestone, RateLaw } from '@/lib/cure/adhesive-sheet';
import { temperatureDifferenceText, temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { Why } from '../_ui/why';

export interface CureWhyProps {
  /** The figure it answers, for those who only hear the page. */
  readonly about: string;
  readonly sheet: AdhesiveSheet;
  /** The milestones it speaks of, at least one. */
  readonly milestones: readonly Milestone[];
  readonly materialName: string;
  readonly mixedAt: Instant;
  /** When it was set or applied; several joints: the first and the last. */
  readonly setText: string;
  readonly time: (at: Instant) => string;
  readonly temperatureUnit: TemperatureUnit;
}

/** For figures whose material does not say where they come from. */
export const NO_SOURCE = 'Not noted: enter it with the data sheet in Stock.';

const READY =
  'What opens is allowed at the latest hour: the coldest plausible temperature and the slowest plausible rate. The first hour is the other end.';
const CLOSING =
  'The recoat window is over at the earliest hour: the warmest plausible temperature and the fastest plausible rate. Cold never makes it longer.';

/** How releases were found: the sheet's hours, the rate law, the temperature they were counted in, and the band. */
export function CureWhy(props: CureWhyProps) {
  const { about, sheet, milestones, materialName, mixedAt, setText, time, temperatureUnit } = props;
  const reference = temperatureText(sheet.referenceC, temperatureUnit);
  const opening = milestones.filter((milestone) => milestone !== 'recoat-by');
  const closes = opening.length < milestones.length;
  const hours = milestones.map((milestone) => {
    const stated = sheet.milestoneHours[milestone];
    return `${milestoneText(milestone)} ${stated === undefined ? 'not stated' : `${stated} h`}`;
  });
  const sources = new Set([...milestones, 'rateLaw' as const].map((name) => sourceText(sheet.sources[name])));
  return (
    <Why
      about={about}
      formula={
        sheet.rateLaw.kind === 'plain-hours'
          ? 'Hours by the clock: this material does not cure by temperature alone.'
          : `Hours at ${reference} are counted as they pass, each weighted by how fast it cures at the temperature of the moment: ${rateText(sheet.rateLaw, temperatureUnit)}.`
      }
      inputs={[
        { label: 'On the sheet', value: `${materialName} at ${reference}: ${hours.join(', ')}` },
        {
          label: 'Counted from',
          value: [
            opening.length > 0 ? setText : '',
            closes ? `the end of recoating from mixing at ${time(mixedAt)}` : '',
          ]
            .filter((part) => part !== '')
            .join('; '),
        },
        {
          label: 'Temperature',
          value: 'the readings of the shop, and its usual week where there is none and for the hours to come',
        },
      ]}
      source={[...sources].filter((source) => source !== '').join(' ') || NO_SOURCE}
      assumption={assumptionText(sheet, opening.length > 0, closes, temperatureUnit) || 'none'}
      uncertainty={[opening.length > 0 ? READY : '', closes ? CLOSING : ''].filter((part) => part !== '').join(' ')}
    />
  );
}

function rateText(law: RateLaw, unit: TemperatureUnit): string {
  switch (law.kind) {
    case 'arrhenius': {
      const { low, central, high } = law.activationEnergyKjPerMol;
      return `exp(Ea/R · (1/T at the sheet − 1/T now)) with Ea ${central} kJ/mol (${low} to ${high})`;
    }
    case 'doubling': {
      const [low, central, high] = [law.doublingC.low, law.doublingC.central, law.doublingC.high].map((degrees) =>
        temperatureDifferenceText(degrees, unit),
      );
      return `the rate doubles every ${central} (${low} to ${high})`;
    }
    case 'plain-hours':
      return 'by the clock';
  }
}

function assumptionText(sheet: AdhesiveSheet, opens: boolean, closes: boolean, unit: TemperatureUnit): string {
  const capHours = sheet.recoatCapHours ?? sheet.milestoneHours['recoat-by'];
  const parts = [
    opens && sheet.rateLaw.kind !== 'plain-hours'
      ? `Below ${temperatureText(sheet.minCureC, unit)} nothing is counted as cured.`
      : '',
    closes && capHours !== undefined
      ? `Recoating is over after ${capHours} h by the clock, whatever the temperature.`
      : '',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** Where a figure comes from, as a sentence; empty when nothing is stated. */
export function sourceText(source: FigureSource | undefined): string {
  if (source === undefined) return '';
  const kind = {
    'data-sheet': 'Data sheet',
    published: 'Published',
    'common-practice': 'Common practice',
    'from-memory': 'From memory',
    own: 'Own figure',
  }[source.kind];
  return source.text === '' ? `${kind}.` : `${kind}: ${source.text}`;
}
