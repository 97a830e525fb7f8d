import { QuantityField, TextField } from '@/app/_ui/field';
import { Section } from '@/app/_ui/page';
import { temperatureSign } from '@/app/_ui/unit-sign';
import { MILESTONE_WORDS } from '@/app/stock/_components/words';
import { MILESTONES, type Milestone } from '@/lib/cure/adhesive-sheet';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { OwnSource } from './own-source';
import type { SheetText } from './sheet-text';

export interface SheetFieldsProps {
  readonly text: SheetText;
  readonly units: UnitChoice;
}

const HINTS: { readonly [M in Milestone]: string } = {
  handle: 'Clamps off, can be moved.',
  sand: 'Dust, not gum.',
  'recoat-from': 'The next coat may go on.',
  'recoat-by': 'The last time without sanding.',
  paint: 'Ready for paint or lacquer.',
  'pull-test': 'Full strength, for a test.',
  ship: 'Hard enough for a box and a fish.',
};

/** Hours from setting to each milestone, at one temperature. */
export function ReadyFields({ text, units }: SheetFieldsProps) {
  return (
    <Section
      title="Hours to each milestone"
      lead="As printed, at the temperature the sheet states them for. From a range take the longest for what opens and the shortest for “recoat by”."
    >
      <div className="max-w-sm">
        <QuantityField
          name="referenceC"
          label="Temperature of these hours"
          hint="“Room temperature” is read as 25 °C (77 °F), on the safe side."
          unit={temperatureSign(units.temperatureUnit)}
          defaultValue={text.referenceC}
        />
      </div>
      <div className="grid gap-x-5 gap-y-4 sm:grid-cols-2 lg:grid-cols-4">
        {MILESTONES.map((milestone) => (
          <div key={milestone}>
            <QuantityField
              name={`milestoneHours.${milestone}`}
              label={MILESTONE_WORDS[milestone]}
              hint={HINTS[milestone]}
              unit="h"
              isOptional
              defaultValue={text.milestoneHours[milestone]}
            />
            <OwnSource figure={milestone} text={text} />
          </div>
        ))}
      </div>
      <div className="grid gap-5 sm:grid-cols-2">
        <QuantityField
          name="recoatCapHours"
          label="Recoat by, by the clock"
          hint="When the sheet sets a limit however cold it is."
          unit="h"
          isOptional
          defaultValue={text.recoatCapHours}
        />
        <TextField
          name="recoatRemedy"
          label="When the window has closed"
          hint="In the words of the sheet. Empty: wash, dry, sand."
          isOptional
          maxLength={500}
          defaultValue={text.recoatRemedy}
        />
      </div>
    </Section>
  );
}
