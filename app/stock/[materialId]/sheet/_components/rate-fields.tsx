import { QuantityField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { temperatureSign } from '@/app/_ui/unit-sign';
import { OwnSource } from './own-source';
import { RateChoice } from './rate-choice';
import type { SheetFieldsProps } from './ready-fields';

/** How the hours follow temperature, and where cure stops. */
export function RateFields({ text, units }: SheetFieldsProps) {
  const sign = temperatureSign(units.temperatureUnit);
  return (
    <Section
      title="Temperature"
      lead="How much slower it cures in the cold. Two times of one step at two temperatures tell it best."
    >
      <RateChoice rate={text.rate} unit={sign} />
      <OwnSource figure="rateLaw" text={text} />
      <div className="max-w-sm">
        <QuantityField
          name="minCureC"
          label="Least temperature of cure"
          hint="Below it ready clocks stand still. Many room-temperature epoxies go dormant below about 13 °C (55 °F)."
          unit={sign}
          defaultValue={text.minCureC}
        />
        <OwnSource figure="minCureC" text={text} />
      </div>
    </Section>
  );
}
