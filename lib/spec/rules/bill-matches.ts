import { chosen } from '@/lib/materials/figure-source';
import { type BillNeed, billNeeds } from '@/lib/spec/bill-need';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { count, mm } from '@/lib/spec/quantity-words';
import { type Judgement, type ModelRule, missing } from '@/lib/spec/rule';
import type { SpecFix } from '@/lib/spec/spec-fix';
import type { SpecBillLine } from '@/lib/spec/spec-model';
import { positiveOrNull } from '@/lib/spec/usable';
import type { Words } from '@/lib/units/quantity';

const ROUNDING = 1e-6;
/** Wire on the bill over what the anchors take, from which on it is worth a word: offcuts and tails aside. Chosen. */
const MUCH_MORE = 3;

/** Whether the bill of materials has what the anchors are made of. */
export const billMatchesRule: ModelRule = {
  id: 'bill-matches',
  about: 'model',
  title: 'The bill has what the anchors are made of',
  formula: 'hooks, rings and screw eyes as many as the anchors have; wire ≥ its developed length; glue on the bill',
  source: chosen('Counted from the anchors; tails to cut off come on top'),
  assumptions: ['The bill is for one piece'],
  setFigure: null,
  check,
};

function check(facts: ModelFacts): Judgement {
  if (facts.anchors.length === 0) return missing(['anchors']);
  if (facts.model.bill === null) return missing(['bill']);
  const bill = facts.model.bill.map((line) => ({ ...line, quantity: positiveOrNull(line.quantity) ?? 0 }));
  const needs = billNeeds(facts);
  if (needs.length === 0) return missing(['wire']);
  const wrong = needs.flatMap((need) => problem(need, bill) ?? []);
  const cautions = needs.flatMap((need) => surplus(need, bill));
  if (wrong.length === 0) {
    return { verdict: 'holds', words: ['The bill has all that the anchors are made of.'], cautions };
  }
  return {
    verdict: 'short',
    words: wrong.flatMap(({ words }, i) => (i === 0 ? words : [' ', ...words])),
    advice: ['Put the bill right.'],
    cautions,
    fixes: () => putRight(wrong.map(({ need }) => need)),
  };
}

interface Problem {
  readonly need: BillNeed;
  readonly words: Words;
}

function problem(need: BillNeed, bill: readonly SpecBillLine[]): Problem | null {
  const lines = bill.filter(({ materialId }) => materialId === need.materialId);
  if (lines.length === 0) return { need, words: [`${need.name} is not on the bill.`] };
  const inUnit = lines.filter(({ quantityUnit }) => quantityUnit === need.unit);
  const has = inUnit.reduce((sum, { quantity }) => sum + quantity, 0);
  // Glue may be on the bill in any unit; how much of it the anchors do not tell.
  if (need.quantity === 0) {
    return lines.some(({ quantity }) => quantity > 0) ? null : { need, words: [`The bill has none of ${need.name}.`] };
  }
  if (inUnit.length < lines.length) return { need, words: [`${need.name} is on the bill in another unit.`] };
  const isEnough = has >= need.quantity - ROUNDING * need.quantity;
  const isRight = need.isExact ? isEnough && has <= need.quantity + ROUNDING : isEnough;
  return isRight
    ? null
    : {
        need,
        words: [
          `${need.name}: the anchors take `,
          amount(need, need.quantity),
          ', the bill has ',
          amount(need, has),
          '.',
        ],
      };
}

function amount({ unit }: BillNeed, quantity: number) {
  return unit === 'pieces' ? count(quantity) : mm(quantity);
}

function surplus(need: BillNeed, bill: readonly SpecBillLine[]): readonly Words[] {
  if (need.isExact || need.quantity === 0) return [];
  const has = bill
    .filter(({ materialId, quantityUnit }) => materialId === need.materialId && quantityUnit === need.unit)
    .reduce((sum, { quantity }) => sum + quantity, 0);
  if (!(has > MUCH_MORE * need.quantity)) return [];
  return [[`${need.name}: the bill has `, mm(has), ', the anchors take ', mm(need.quantity), '.']];
}

/** All lines at once; none where the anchors do not tell how much. */
function putRight(needs: readonly BillNeed[]): readonly SpecFix[] {
  if (needs.some(({ quantity }) => quantity === 0)) return [];
  return [
    {
      way: 'bill',
      words: ['Put on the bill what the anchors take.'],
      changes: needs.map(({ materialId, quantity, unit }) => ({
        kind: 'bill' as const,
        line: { materialId, quantity, quantityUnit: unit },
      })),
      size: needs.length,
      carries: null,
    },
  ];
}
