'use client';

import { useRef, useState } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import { RowFrame, useRows } from '@/app/_ui/rows';
import type { SelectOption } from '@/app/_ui/select-field';
import { OperationFields, type OperationText } from './operation-fields';

export interface OperationRowsProps {
  readonly operations: readonly OperationText[];
  readonly adhesives: readonly SelectOption[];
  readonly anchors: readonly SelectOption[];
}

/** The steps of a route as rows. A new step waits for the one before it. */
export function OperationRows({ operations, adhesives, anchors }: OperationRowsProps) {
  const list = useRows(operations);
  const newCount = useRef(0);
  // Names as they are typed, so that "waits for" lists them by what they are called now.
  const [names, setNames] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(operations.map(({ ref, name }) => [ref, name])),
  );
  const choices = list.rows.map(({ start: { ref } }, index) => ({
    value: ref,
    label: `${index + 1}. ${names[ref] || 'no name yet'}`,
  }));

  function add() {
    newCount.current += 1;
    const last = list.rows.at(-1)?.start;
    const needs = last === undefined ? [] : [{ after: last.ref, wait: 'done' as const }];
    list.add({
      ref: `new-${newCount.current}`,
      name: '',
      kind: 'work',
      minutes: '',
      materialId: '',
      anchorIds: [],
      caution: 'none',
      needs,
    });
  }

  return (
    <div className="grid gap-4">
      {list.rows.map((row, index) => (
        <RowFrame key={row.key} list={list} index={index} title={`Step ${index + 1}`}>
          <OperationFields
            operation={row.start}
            path={`operations.${index}`}
            above={choices.slice(0, index)}
            adhesives={adhesives}
            anchors={anchors}
            onName={(name) => setNames((before) => ({ ...before, [row.start.ref]: name }))}
          />
        </RowFrame>
      ))}
      {list.rows.length === 0 && <p className="text-ink-soft">No steps yet. Begin with the blank.</p>}
      <div>
        <button type="button" className={buttonClass('plain')} onClick={add}>
          Add a step
        </button>
      </div>
    </div>
  );
}
