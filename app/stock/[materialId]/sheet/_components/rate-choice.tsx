'use client';

import { useState } from 'react';
import { RadioField } from '@/app/_ui/choice-field';
import { QuantityField, TextField } from '@/app/_ui/field';
import { EnergyPreview } from './energy-preview';
import type { SheetText } from './sheet-text';

const WAYS = [
  { value: 'two-temperatures', label: 'Two temperatures on the sheet' },
  { value: 'common', label: 'One temperature only, an epoxy' },
  { value: 'own', label: 'Activation energy' },
  { value: 'doubling', label: 'Doubles every so many degrees' },
  { value: 'plain-hours', label: 'Not by temperature: moisture, solvent, light' },
] as const;

export interface RateChoiceProps {
  readonly rate: SheetText['rate'];
  readonly unit: string;
}

/** The way in which the hours follow temperature, and what that way needs to know. */
export function RateChoice({ rate, unit }: RateChoiceProps) {
  const [way, setWay] = useState(rate.kind);
  return (
    <div className="grid gap-4">
      <RadioField
        name="rate.kind"
        legend="What the sheet tells"
        options={WAYS}
        defaultValue={rate.kind}
        onPick={setWay}
      />
      {way === 'two-temperatures' && <TwoTemperatures unit={unit} />}
      {way === 'common' && (
        <p className="max-w-2xl text-ink-soft">
          The usual activation energy of amine-cured epoxies is taken: 55 kJ/mol, between 45 and 65. Published figures
          lie between 44 and 67. The clocks show the width of it.
        </p>
      )}
      {way === 'own' && <BoxFields title="kJ/mol" rate={rate.kind === 'own' ? rate : null} />}
      {way === 'doubling' && (
        <BoxFields title={`${unit} to double the rate`} rate={rate.kind === 'doubling' ? rate : null} />
      )}
      {way === 'plain-hours' && (
        <p className="max-w-2xl text-ink-soft">
          Its hours are counted as they are, above the least temperature. Damp, film thickness or light rule it: keep
          the sheet’s limits.
        </p>
      )}
    </div>
  );
}

function TwoTemperatures({ unit }: { readonly unit: string }) {
  const [typed, setTyped] = useState({ firstC: '', firstTime: '', secondC: '', secondTime: '' });
  const field = (name: keyof typeof typed, label: string, sign: string) => (
    <QuantityField
      name={`rate.${name}`}
      label={label}
      unit={sign}
      onType={(text) => setTyped((before) => ({ ...before, [name]: text }))}
    />
  );
  return (
    <div className="grid max-w-3xl gap-4">
      <p className="text-ink-soft">
        The same step at two temperatures: two gel times, or two times to full cure. Minutes are fine: 45 min.
      </p>
      <div className="grid grid-cols-2 gap-4 lg:grid-cols-4">
        {field('firstC', 'At', unit)}
        {field('firstTime', 'it takes', 'h')}
        {field('secondC', 'and at', unit)}
        {field('secondTime', 'it takes', 'h')}
      </div>
      <EnergyPreview typed={typed} unit={unit} />
    </div>
  );
}

function BoxFields({ title, rate }: { readonly title: string; readonly rate: SheetText['rate'] | null }) {
  return (
    <div className="grid max-w-2xl grid-cols-3 gap-4">
      <TextField name="rate.low" label={`Lowest, ${title}`} maxLength={20} defaultValue={rate?.low} />
      <TextField name="rate.central" label={`Middle, ${title}`} maxLength={20} defaultValue={rate?.central} />
      <TextField name="rate.high" label={`Highest, ${title}`} maxLength={20} defaultValue={rate?.high} />
    </div>
  );
}
