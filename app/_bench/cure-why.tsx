import type { AdhesiveSheet, FigureSource, Milestone, RateLaw } from '@/lib/cure/adhesive-sheet';
import { temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import { Why } from '../_ui/why';

export interface CureWhyProps {
  /** The figure it answers, for those who only hear the page. */
  readonly about: string;
  readonly sheet: AdhesiveSheet;
  readonly milestone: Milestone;
  readonly materialName: string;
  readonly mixedAt: Instant;
  /** When it was set or applied; several joints: the first and the last. */
  readonly setText: string;
  readonly time: (at: Instant) => string;
  readonly temperatureUnit: TemperatureUnit;
}

/** How a release was found: the sheet's hours, the rate law, the temperature it was counted in, and the band. */
export function CureWhy(props: CureWhyProps) {
  const { about, sheet, milestone, materialName, mixedAt, setText, time, temperatureUnit } = props;
  const hours = sheet.milestoneHours[milestone];
  const reference = temperatureText(sheet.referenceC, temperatureUnit);
  const isPlain = sheet.rateLaw.kind === 'plain-hours';
  return (
    <Why
      about={about}
      formula={
        isPlain
          ? 'Hours by the clock: this material does not cure by temperature alone.'
          : `Hours at ${reference} are counted as they pass, each weighted by how fast it cures at the temperature of the moment: ${rateText(sheet.rateLaw)}.`
      }
      inputs={[
        {
          label: 'Asked for',
          value: hours === undefined ? 'not on the sheet' : `${hours} h at ${reference}, ${materialName}`,
        },
        {
          label: 'Counted from',
          value: milestone === 'recoat-by' ? `mixing at ${time(mixedAt)}` : setText,
        },
        {
          label: 'Temperature',
          value: 'the readings of the shop, and its usual week where there is none and for the hours to come',
        },
      ]}
      source={[sourceText(sheet.sources[milestone]), sourceText(sheet.sources.rateLaw)].filter(Boolean).join(' ')}
      assumption={assumptionText(sheet, milestone, temperatureUnit)}
      uncertainty={
        milestone === 'recoat-by'
          ? 'The earliest hour counts: the warmest plausible temperature and the fastest plausible rate. Cold never makes the window longer.'
          : 'The latest hour counts: the coldest plausible temperature and the slowest plausible rate. The first hour is the other end.'
      }
    />
  );
}

function rateText(law: RateLaw): string {
  switch (law.kind) {
    case 'arrhenius': {
      const { low, central, high } = law.activationEnergyKjPerMol;
      return `exp(Ea/R · (1/T at the sheet − 1/T now)) with Ea ${central} kJ/mol (${low} to ${high})`;
    }
    case 'doubling': {
      const { low, central, high } = law.doublingC;
      return `the rate doubles every ${central} degC (${low} to ${high})`;
    }
    case 'plain-hours':
      return 'by the clock';
  }
}

function assumptionText(sheet: AdhesiveSheet, milestone: Milestone, unit: TemperatureUnit): string {
  if (milestone === 'recoat-by') {
    const cap = sheet.recoatCapHours ?? sheet.milestoneHours['recoat-by'];
    return cap === undefined ? '' : `Over after ${cap} h by the clock, whatever the temperature.`;
  }
  return sheet.rateLaw.kind === 'plain-hours'
    ? ''
    : `Below ${temperatureText(sheet.minCureC, unit)} nothing is counted as cured.`;
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
