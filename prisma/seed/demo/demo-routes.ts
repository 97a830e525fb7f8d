import type { OperationKind, Wait } from '@/lib/batch/plan';
import type { CautionTopic } from '@/lib/contracts/caution-topic';
import { EPOXY_5, EPOXY_30, EPOXY_60, TOPCOAT } from './demo-materials';

/** A step of a demo route. Its id within a revision is `key`. */
export interface DemoOperation {
  readonly key: string;
  readonly name: string;
  readonly kind: OperationKind;
  readonly attendedMinutes: number;
  readonly materialId: string | null;
  readonly caution: CautionTopic;
  /** [key of an earlier operation, what is waited for] */
  readonly needs: readonly (readonly [string, Wait])[];
}

const shaping: readonly DemoOperation[] = [
  {
    key: 'shape',
    name: 'Shape and sand body',
    kind: 'work',
    attendedMinutes: 12,
    materialId: null,
    caution: 'dust',
    needs: [],
  },
  {
    key: 'drill',
    name: 'Drill for anchors',
    kind: 'work',
    attendedMinutes: 4,
    materialId: null,
    caution: 'dust',
    needs: [['shape', 'done']],
  },
];

function glueing(materialId: string): DemoOperation {
  return {
    key: 'glue',
    name: 'Glue anchors',
    kind: 'glue',
    attendedMinutes: 2.5,
    materialId,
    caution: 'epoxy',
    needs: [['drill', 'done']],
  };
}

const lip: DemoOperation = {
  key: 'lip',
  name: 'Bed the lip',
  kind: 'coat',
  attendedMinutes: 1,
  materialId: EPOXY_5,
  caution: 'epoxy',
  needs: [['glue', 'handle']],
};

function finishing(flushNeeds: DemoOperation['needs']): readonly DemoOperation[] {
  return [
    {
      key: 'flush',
      name: 'Sand flush',
      kind: 'work',
      attendedMinutes: 5,
      materialId: null,
      caution: 'dust',
      needs: flushNeeds,
    },
    {
      key: 'seal',
      name: 'Seal coat',
      kind: 'coat',
      attendedMinutes: 2,
      materialId: TOPCOAT,
      caution: 'epoxy',
      needs: [['flush', 'done']],
    },
    {
      key: 'paint',
      name: 'Scuff and paint',
      kind: 'work',
      attendedMinutes: 15,
      materialId: null,
      caution: 'dust',
      needs: [['seal', 'sand']],
    },
    {
      key: 'top-1',
      name: 'First topcoat',
      kind: 'coat',
      attendedMinutes: 2,
      materialId: TOPCOAT,
      caution: 'epoxy',
      needs: [['paint', 'done']],
    },
    {
      key: 'top-2',
      name: 'Second topcoat',
      kind: 'coat',
      attendedMinutes: 2,
      materialId: TOPCOAT,
      caution: 'epoxy',
      needs: [['top-1', 'recoat']],
    },
    {
      key: 'hooks',
      name: 'Fit rings and hooks',
      kind: 'work',
      attendedMinutes: 3,
      materialId: null,
      caution: 'wire',
      needs: [['top-2', 'handle']],
    },
    {
      key: 'pack',
      name: 'Pull-check and pack',
      kind: 'work',
      attendedMinutes: 2,
      materialId: null,
      caution: 'pull',
      needs: [
        ['glue', 'pull-test'],
        ['top-2', 'ship'],
        ['hooks', 'done'],
      ],
    },
  ];
}

export const plainRoute: readonly DemoOperation[] = [...shaping, glueing(EPOXY_30), ...finishing([['glue', 'sand']])];

export const lipRoute: readonly DemoOperation[] = [
  ...shaping,
  glueing(EPOXY_30),
  lip,
  ...finishing([
    ['glue', 'sand'],
    ['lip', 'sand'],
  ]),
];

export const throughWireRoute: readonly DemoOperation[] = [
  ...shaping,
  glueing(EPOXY_60),
  ...finishing([['glue', 'sand']]),
];
