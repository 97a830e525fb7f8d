'use client';

import { fitActivationEnergy } from '@/lib/cure/activation-energy';
import { readQuantity } from '@/lib/units/read-quantity';

export interface EnergyPreviewProps {
  readonly typed: {
    readonly firstC: string;
    readonly firstTime: string;
    readonly secondC: string;
    readonly secondTime: string;
  };
  readonly unit: string;
}

const WORDS = {
  'not-positive': 'Both times must be above nothing.',
  'same-temperature': 'Two different temperatures are needed.',
  'not-faster-when-warmer': 'The warmer one is not the faster one. Are the two times swapped?',
  impossible: 'No cure changes like that. Are both times of the same step?',
} as const;

/** What the two times tell while they are being typed, by the same function the server uses. */
export function EnergyPreview({ typed, unit }: EnergyPreviewProps) {
  return (
    <p role="status" className="min-h-6 font-medium">
      {previewText(typed, unit)}
    </p>
  );
}

function previewText({ firstC, firstTime, secondC, secondTime }: EnergyPreviewProps['typed'], unit: string): string {
  const readings = [
    readQuantity('temperature', firstC, unit),
    readQuantity('duration', firstTime, 'h'),
    readQuantity('temperature', secondC, unit),
    readQuantity('duration', secondTime, 'h'),
  ].map((reading) => (reading.ok ? reading.value : null));
  const [temperature1, minutes1, temperature2, minutes2] = readings;
  if (temperature1 == null || minutes1 == null || temperature2 == null || minutes2 == null) return '';
  const fit = fitActivationEnergy(
    { temperatureC: temperature1, minutes: minutes1 },
    { temperatureC: temperature2, minutes: minutes2 },
  );
  if (!fit.ok) return WORDS[fit.code];
  const energy = `Activation energy ${fit.kjPerMol.toFixed(1)} kJ/mol, taken as ${fit.box.low.toFixed(1)} to ${fit.box.high.toFixed(1)}.`;
  return fit.isUnusual ? `${energy} That is unusual for an epoxy: look at both times again.` : energy;
}
