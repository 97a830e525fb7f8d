import highsLoader from 'highs';
import { cutList } from '@/lib/bom/cut-list';
import { searchCuts } from '@/lib/bom/cut-search';
import { twistedEyeLength } from '@/lib/bom/developed-length';
import { potLife } from '@/lib/cure/pot-life';
import type { MixUse } from '@/lib/mixing/arrangement';
import { doses } from '@/lib/mixing/doses';
import { glueMassG, glueRoundShank } from '@/lib/mixing/glue-need';
import { planMixes } from '@/lib/mixing/mix-plan';
import { seededRandom } from '@/lib/statistics/seeded-random';

/** The figures of issue 5: preparing 100 pieces of 3 anchors, and the cut list against a general solver. */

const REPEATS = 9;

const SHEET = {
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'standard-cup' }],
} as const;

const ANCHORS = [
  { id: 'tie', shankMm: 30, bitMm: 2.5 },
  { id: 'belly', shankMm: 22, bitMm: 2.5 },
  { id: 'tail', shankMm: 26, bitMm: 2.4 },
];

function median(times: number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
}

function timed(work: () => void): number {
  return median(
    Array.from({ length: REPEATS }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );
}

/** Glue, mixes with doses, wires and their cut list. */
function prepare(pieces: number): { mixes: number; bars: number; isProven: boolean } {
  const grams = ANCHORS.map(({ shankMm, bitMm }) => {
    const need = glueRoundShank({ holeDiameterMm: bitMm, embedmentMm: shankMm, wireDiameterMm: 0.9, pitchMm: 6 });
    return need.ok ? glueMassG(need.netMm3, 1.12, 1.5) : 0;
  });
  const uses: MixUse[] = Array.from({ length: pieces * ANCHORS.length }, (_, i) => ({
    piece: 1 + Math.floor(i / ANCHORS.length),
    anchorId: ANCHORS[i % ANCHORS.length]?.id ?? '',
    massG: grams[i % ANCHORS.length] ?? 0,
  }));
  const pace = { secondsPerUse: 45, people: 1, stirSeconds: 120, usableShare: 0.8 };
  const cup = {
    weighedG: (neededG: number) => {
      const dosed = doses(neededG, 2, 0.05, { stepG: 0.1, errorG: 0.1 });
      return dosed.ok ? dosed.massG : null;
    },
    potLifeMinutes: (massG: number) => {
      const life = potLife(SHEET, massG, 22);
      return life.ok ? life.lowerMinutes : 0;
    },
    mostG: 100,
    lossG: 0.5,
  };
  const plan = planMixes(uses, 'spread', pace, cup);
  const wires = ANCHORS.map(({ id, shankMm }) => {
    const eye = { wireDiameterMm: 0.9, pitchMm: 6, eyeInsideMm: 3, loopDeg: 360, tailsMm: 4, trimMm: 20 };
    const length = twistedEyeLength({ ...eye, shankMm });
    return { id, lengthMm: length.ok ? Math.ceil(length.cutMm * 2) / 2 : 0, count: pieces };
  });
  const stock = [
    { id: 'rods', lengthMm: 914, count: 30 },
    { id: 'short rods', lengthMm: 610, count: 12 },
    { id: 'offcut', lengthMm: 402, count: 1 },
  ];
  const cuts = cutList(stock, wires, { kerfMm: 0.5, endTrimMm: 5, reuseMm: 90, buyMm: 914 });
  return {
    mixes: plan.ok ? plan.mixes.length : 0,
    bars: cuts.ok ? cuts.bars.length : 0,
    isProven: cuts.ok && cuts.isProven,
  };
}

interface Instance {
  readonly name: string;
  readonly capacity: number;
  readonly items: readonly (readonly [size: number, count: number])[];
}

/** Sizes drawn evenly, as many as a general solver can hold. */
function drawn(
  name: string,
  capacity: number,
  from: number,
  to: number,
  kinds: number,
  each: number,
  seed: number,
): Instance {
  const random = seededRandom(seed);
  const counts = new Map<number, number>();
  for (let i = 0; i < kinds; i++) {
    const size = from + Math.floor(random() * (to - from + 1));
    counts.set(size, (counts.get(size) ?? 0) + 1 + Math.floor(random() * each));
  }
  return { name, capacity, items: [...counts].sort(([a], [b]) => b - a) };
}

const INSTANCES: readonly Instance[] = [
  {
    name: 'wires of a batch',
    capacity: 996,
    items: [
      [166, 12],
      [143, 18],
      [119, 24],
      [97, 30],
    ],
  },
  {
    name: 'the threes',
    capacity: 1000,
    items: [
      [334, 30],
      [333, 31],
    ],
  },
  {
    name: 'textbook, 219 rolls of 13 widths',
    capacity: 5600,
    items: [
      [2200, 20],
      [2150, 18],
      [2140, 16],
      [2100, 14],
      [2050, 12],
      [2000, 10],
      [1930, 20],
      [1880, 18],
      [1820, 18],
      [1710, 14],
      [1560, 12],
      [1520, 25],
      [1380, 22],
    ],
  },
  drawn('60 drawn pieces', 150, 20, 100, 60, 1, 7),
  drawn('120 drawn pieces', 150, 20, 100, 120, 1, 8),
];

/** The classical arc-flow model in the words of an LP file: arcs of a graph over the capacity. */
function arcFlow({ capacity, items }: Instance): string {
  const reached = new Uint8Array(capacity + 1);
  reached[0] = 1;
  const arcs: { from: number; to: number; item: number }[] = [];
  for (const [item, [size, count]] of items.entries()) {
    const before = reached.slice();
    for (let from = 0; from + size <= capacity; from++) {
      if (before[from] !== 1) continue;
      for (let times = 0, at = from; times < count && at + size <= capacity; times++, at += size) {
        reached[at + size] = 1;
        if (!arcs.some((arc) => arc.from === at && arc.item === item)) arcs.push({ from: at, to: at + size, item });
      }
    }
  }
  const nodes = Array.from(reached.keys()).filter((node) => reached[node] === 1 && node > 0 && node < capacity);
  const x = (arc: number) => `x${arc}`;
  const out = new Map<number, number[]>();
  const into = new Map<number, number[]>();
  for (const [i, arc] of arcs.entries()) {
    out.set(arc.from, [...(out.get(arc.from) ?? []), i]);
    into.set(arc.to, [...(into.get(arc.to) ?? []), i]);
  }
  const sum = (list: readonly number[] | undefined, sign: string) =>
    (list ?? []).map((i) => `${sign} ${x(i)}`).join(' ');
  const balances = nodes.map((node) => `${sum(into.get(node), '+')} ${sum(out.get(node), '-')} - l${node} = 0`);
  const demands = items.map(
    ([, count], item) =>
      `${sum(
        arcs.flatMap((arc, i) => (arc.item === item ? [i] : [])),
        '+',
      )} >= ${count}`,
  );
  const names = [...arcs.keys()].map(x);
  return [
    'Minimize',
    sum(out.get(0), '+'),
    'Subject To',
    ...balances.filter((line) => line.includes('x')),
    ...demands,
    'General',
    ...names,
    'End',
  ].join('\n');
}

/** Prints one line a figure. */
export async function run(): Promise<void> {
  const { mixes, bars, isProven } = prepare(100);
  const first = timed(() => prepare(100));
  console.log(
    `prepare: 100 pieces x 3 anchors, ${mixes} mixes, ${bars} lengths (proven: ${isProven}): ${first.toFixed(1)} ms`,
  );
  const highs = await highsLoader();
  for (const instance of INSTANCES) {
    const problem = {
      sizes: instance.items.map(([size]) => size),
      demand: instance.items.map(([, count]) => count),
      stocks: [{ capacity: instance.capacity, cost: 1, count: Number.POSITIVE_INFINITY }],
    };
    const own = searchCuts(problem);
    const ownMs = timed(() => searchCuts(problem));
    const model = arcFlow(instance);
    const start = performance.now();
    const general = highs.solve(model, { time_limit: 60 });
    const generalMs = performance.now() - start;
    const told = general.Status === 'Optimal' ? `${Math.round(general.ObjectiveValue)}` : general.Status;
    console.log(
      `cutting stock, ${instance.name}: own ${own.cost} (proven: ${own.isProven}) in ${ownMs.toFixed(1)} ms, general solver ${told} in ${generalMs.toFixed(0)} ms`,
    );
  }
}
