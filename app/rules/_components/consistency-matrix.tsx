import Link from 'next/link';
import { StatusMark } from '@/app/_ui/status-mark';
import type { WireHabit, WireUse, WireWayUses } from '@/lib/spec/shop-use';
import type { SpecModel } from '@/lib/spec/spec-model';
import { lengthText, wireDiameterText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface ConsistencyMatrixProps {
  readonly habits: readonly WireHabit[];
  readonly models: readonly SpecModel[];
  readonly units: UnitChoice;
}

/** Models down, wires across: in each cell the ways in which the model uses the wire. */
export function ConsistencyMatrix({ habits, models, units }: ConsistencyMatrixProps) {
  const users = models.filter(({ modelId }) =>
    habits.some(({ ways }) => ways.some(({ uses }) => uses.some(isOf(modelId)))),
  );
  if (users.length === 0) {
    return (
      <p className="max-w-2xl text-ink-soft">
        No model has a twisted wire with bit, glue and depth yet: enter them with the anchors of a model.
      </p>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled with the keyboard, too.
    <section className="overflow-x-auto" aria-label="Matrix of models and wires" tabIndex={0}>
      <table className="w-full min-w-max border-collapse text-left">
        <thead>
          <tr className="border-b-2 border-line-strong text-sm text-ink-soft">
            <th scope="col" className="py-2 pr-4 font-semibold">
              Model
            </th>
            {habits.map((habit) => (
              <th
                key={`${habit.wireMaterialId} ${habit.wireDiameterMm}`}
                scope="col"
                className="max-w-56 px-3 py-2 align-bottom font-semibold"
              >
                {habit.wireName}
                <br />
                <span className="font-normal">{wireDiameterText(habit.wireDiameterMm, units.lengthUnit)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {users.map(({ modelId, modelName, revisionLetter }) => (
            <tr key={modelId} className="border-b border-line align-top">
              <th scope="row" className="py-3 pr-4 font-semibold">
                <Link href={`/models/${modelId}`} prefetch={false} className="underline underline-offset-4">
                  {modelName} {revisionLetter}
                </Link>
              </th>
              {habits.map((habit) => (
                <td key={`${habit.wireMaterialId} ${habit.wireDiameterMm}`} className="px-3 py-3">
                  <Ways habit={habit} modelId={modelId} units={units} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function isOf(modelId: string) {
  return (use: WireUse) => use.modelId === modelId;
}

interface WaysProps {
  readonly habit: WireHabit;
  readonly modelId: string;
  readonly units: UnitChoice;
}

function Ways({ habit, modelId, units }: WaysProps) {
  const own = habit.ways.filter(({ uses }) => uses.some(isOf(modelId)));
  if (own.length === 0) return <span className="text-ink-soft">–</span>;
  return (
    <ul className="grid gap-2">
      {own.map((way) => (
        <li key={wayText(way, units)} className="grid">
          <span>{wayText(way, units)}</span>
          <span className="text-sm text-ink-soft">
            {way.uses
              .filter(isOf(modelId))
              .map(({ anchorName }) => anchorName)
              .join(', ')}
          </span>
          <Mark habit={habit} way={way} modelId={modelId} />
        </li>
      ))}
    </ul>
  );
}

function wayText({ way }: WireWayUses, { lengthUnit }: UnitChoice): string {
  return `${lengthText(way.bitDiameterMm, lengthUnit)} bit, ${lengthText(way.embedmentMm, lengthUnit)} deep, ${way.adhesive.name}`;
}

interface MarkProps {
  readonly habit: WireHabit;
  readonly way: WireWayUses;
  readonly modelId: string;
}

function Mark({ habit, way, modelId }: MarkProps) {
  if (habit.ways[0] === way) return <span className="text-sm text-ink-soft">the usual way</span>;
  const isWaived = way.uses.filter(isOf(modelId)).every((use) => use.isWaived);
  return (
    <span className="text-sm">
      <StatusMark status={isWaived ? 'waived' : 'short'}>{isWaived ? 'differs, waived' : 'differs'}</StatusMark>
    </span>
  );
}
