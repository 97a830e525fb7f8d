import { sectionAt } from '@/lib/geometry/body';
import { ellipsePerimeter } from '@/lib/geometry/ellipse';
import type { FigureSource } from '@/lib/materials/figure-source';
import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import { figure } from '@/lib/spec/finding';
import { eyeMiddle, type HookReach, hookReach } from '@/lib/spec/hook-reach';
import type { InputName } from '@/lib/spec/input-name';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { mm } from '@/lib/spec/quantity-words';
import { type AnchorRule, type Judgement, missing } from '@/lib/spec/rule';
import type { Words } from '@/lib/units/quantity';

const SOURCE: FigureSource = {
  kind: 'common-practice',
  text: 'Hooks that can reach each other tangle: common practice, no source',
};

/** Whether a hook can catch another hook, or reach round the body and lodge over it. */
export const hooksFoulRule: AnchorRule = {
  id: 'hooks-foul',
  about: 'anchor',
  title: 'No hook reaches another, or round the body',
  formula: 'distance of the eyes > sum of both reaches; half girth > reach; reach = split ring + hook',
  source: SOURCE,
  assumptions: ['Both hooks swing freely towards each other', 'Half the girth of the body where the hanger sits'],
  setFigure: null,
  check,
};

function check(facts: AnchorFacts, model: ModelFacts): Judgement | null {
  if (facts.anchor.hook === null) return null;
  const own = hookReach(facts);
  if (!own.ok) return missing(own.missing);
  const { reach } = own;
  const unknown = new Set<InputName>();
  let nearest: { readonly name: string; readonly roomMm: number; readonly apartMm: number } | null = null;
  for (const other of model.anchors) {
    if (other === facts || other.anchor.hook === null) continue;
    const its = hookReach(other);
    if (!its.ok) {
      for (const input of its.missing) unknown.add(input);
      continue;
    }
    const apartMm = apart(reach, its.reach);
    const roomMm = apartMm - reach.reachMm - its.reach.reachMm;
    if (nearest === null || roomMm < nearest.roomMm) nearest = { name: other.anchor.name, roomMm, apartMm };
  }
  const girthMm = halfGirth(facts, model);
  const figures = [
    figure('Reach of its hook', reach.reachMm, 'mm'),
    ...(nearest === null ? [] : [figure('Room to the nearest other hook', nearest.roomMm, 'mm')]),
    ...(girthMm === null ? [] : [figure('Half girth', girthMm, 'mm')]),
  ];
  const fouls: Words[] = [];
  if (nearest !== null && nearest.roomMm <= 0) {
    fouls.push([`Its hook reaches that of ${nearest.name}: the eyes are `, mm(nearest.apartMm), ' apart.']);
  }
  if (girthMm !== null && reach.reachMm >= girthMm) {
    fouls.push(['Its hook reaches ', mm(reach.reachMm), ', round the body and over its other side.']);
  }
  if (fouls.length > 0) {
    return {
      verdict: 'short',
      words: fouls.flatMap((words, i) => (i === 0 ? words : [' ', ...words])),
      figures,
      advice: ['Take a smaller hook or split ring, or move the hangers apart.'],
    };
  }
  if (unknown.size > 0) return { ...missing([...unknown]), words: ['Another hook is not known well enough.'], figures };
  return {
    verdict: 'holds',
    words: ['Its hook reaches ', mm(reach.reachMm), ' and no other.'],
    figures,
    cautions: lineCautions(facts, reach, model),
  };
}

function apart(a: Pick<HookReach, 'xMm' | 'zMm'>, b: Pick<HookReach, 'xMm' | 'zMm'>): number {
  return Math.hypot(a.xMm - b.xMm, a.zMm - b.zMm);
}

/** Half the girth where a belly or back hanger sits; null for the ends, round which nothing lodges. */
function halfGirth({ anchor, of: { path } }: AnchorFacts, { body }: ModelFacts): number | null {
  if (path === null || body === null || anchor.face === 'nose' || anchor.face === 'tail') return null;
  const { halfHeightMm, halfWidthMm } = sectionAt(body, path.entryX);
  return halfHeightMm > 0 && halfWidthMm > 0 ? 0.5 * ellipsePerimeter(halfHeightMm, halfWidthMm) : null;
}

function lineCautions(facts: AnchorFacts, reach: HookReach, { anchors }: ModelFacts): readonly Words[] {
  return anchors.flatMap((other): readonly Words[] => {
    if (other === facts || other.anchor.role !== 'line-tie') return [];
    const tie = eyeMiddle(other);
    if (tie === null || apart(reach, tie) > reach.reachMm) return [];
    return [[`Its hook reaches ${other.anchor.name} and may catch the line.`]];
  });
}
