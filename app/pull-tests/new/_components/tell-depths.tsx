'use client';

import { useId, useState } from 'react';
import { inputClass } from '@/app/_ui/input-class';
import { type MixesToTell, mixesToTell } from '@/lib/pulltest/mixes-to-tell';
import { readQuantity } from '@/lib/units/read-quantity';

export interface TellDepthsProps {
  /** Sign of the shop's length unit, `in` or `mm`. */
  readonly unit: string;
  readonly shallow: string;
  readonly deep: string;
}

/** How many mixes it takes to tell two depths apart, worked out while it is typed. */
export function TellDepths({ unit, shallow: firstShallow, deep: firstDeep }: TellDepthsProps) {
  const [shallow, setShallow] = useState(firstShallow);
  const [deep, setDeep] = useState(firstDeep);
  const [percent, setPercent] = useState('20');
  const [levels, setLevels] = useState('5');
  return (
    <div className="grid gap-4">
      <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-4">
        <Box label={`Shallower depth (${unit})`} value={shallow} onChange={setShallow} />
        <Box label={`Deeper depth (${unit})`} value={deep} onChange={setDeep} />
        <Box label="Expected scatter, %" value={percent} onChange={setPercent} />
        <Box label="Depths in the series" value={levels} onChange={setLevels} />
      </div>
      <p role="status" className="border-l-4 border-ink bg-well px-4 py-3">
        {answer(shallow, deep, percent, levels, unit)}
      </p>
    </div>
  );
}

interface BoxProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

function Box({ label, value, onChange }: BoxProps) {
  const id = useId();
  return (
    <div className="grid content-start gap-1.5">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <input
        id={id}
        className={inputClass}
        value={value}
        maxLength={20}
        autoComplete="off"
        onChange={(event) => onChange(event.currentTarget.value)}
      />
    </div>
  );
}

function answer(shallow: string, deep: string, percent: string, levels: string, unit: string): string {
  const [low, high] = [readQuantity('length', shallow, unit), readQuantity('length', deep, unit)];
  const variation = Number(percent.replace(',', '.')) / 100;
  const count = Number(levels);
  if (!low.ok || !high.ok || !(low.value > 0 && high.value > low.value))
    return 'Write two depths, the deeper one last.';
  if (!(variation >= 0.01 && variation <= 1)) return 'Write the scatter as a percentage from 1 to 100.';
  if (!(Number.isInteger(count) && count >= 2 && count <= 12)) return 'A series has 2 to 12 depths.';
  const told = mixesToTell({ shallowMm: low.value, deepMm: high.value, saturationMm: null, variation, levels: count });
  return sentence(told);
}

function sentence({ ratio, forFourInFive, forNineInTen, withThree }: MixesToTell): string {
  const more = Math.round((ratio - 1) * 100);
  const mixes = (count: number | null) =>
    count === null ? 'more than 200 mixes' : count === 1 ? '1 mix' : `${count} mixes`;
  return `The deeper one is expected to hold ${more} % more. To tell them apart in four series of five takes ${mixes(forFourInFive)}, in nine of ten ${mixes(forNineInTen)}. Three mixes do it in ${Math.round(withThree * 100)} of a hundred.`;
}
