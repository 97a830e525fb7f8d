import Link from 'next/link';
import { type Column, Table } from '@/app/_ui/table';
import { figureSourceText } from '@/app/stock/_components/words';
import type { Finding } from '@/lib/spec/finding';
import { type Standing, standingOf } from '@/lib/spec/finding-changes';
import type { Rule } from '@/lib/spec/rule';
import { RULES } from '@/lib/spec/rules';
import type { SpecSettings } from '@/lib/spec/spec-settings';
import { quantityText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { JudgedModel } from '@/prisma/data/shop-findings';

export interface RuleTableProps {
  readonly judged: readonly JudgedModel[];
  readonly settings: SpecSettings;
  readonly units: UnitChoice;
}

/** Every rule: what it asks, where it comes from, the shop's figure, and who is short of it. */
export function RuleTable({ judged, settings, units }: RuleTableProps) {
  const columns: Column<Rule>[] = [
    {
      id: 'title',
      title: 'Rule',
      cell: (rule) => (
        <span className="grid gap-1">
          {rule.title}
          <span className="text-sm font-normal text-ink-soft">{rule.formula}</span>
        </span>
      ),
    },
    {
      id: 'source',
      title: 'Source',
      cell: (rule) => <span className="text-sm">{figureSourceText(rule.source)}</span>,
      isLong: true,
    },
    { id: 'figure', title: "Shop's figure", cell: (rule) => shopFigure(rule, settings, units), isLong: true },
    { id: 'short', title: 'Short', cell: (rule) => <Who judged={judged} rule={rule} standing="short" />, isLong: true },
    {
      id: 'waived',
      title: 'Waived',
      cell: (rule) => <Who judged={judged} rule={rule} standing="waived" />,
      isLong: true,
    },
    { id: 'open', title: 'Not judged', cell: (rule) => count(judged, rule, 'not-judged'), isNumber: true },
    { id: 'holds', title: 'Holds', cell: (rule) => count(judged, rule, 'holds'), isNumber: true },
  ];
  return <Table caption="Rules" columns={columns} rows={RULES} rowKey={(rule) => rule.id} />;
}

function shopFigure({ setFigure }: Rule, settings: SpecSettings, units: UnitChoice): string {
  if (setFigure === null) return 'none to set';
  const { name, quantity } = setFigure(settings);
  return `${name}: ${quantityText(quantity, units)}`;
}

function standing(findings: readonly Finding[], rule: Rule, wanted: Standing): number {
  return findings.filter((finding) => finding.ruleId === rule.id && standingOf(finding) === wanted).length;
}

function count(judged: readonly JudgedModel[], rule: Rule, wanted: Standing): number {
  return judged.reduce((sum, { findings }) => sum + standing(findings, rule, wanted), 0);
}

interface WhoProps {
  readonly judged: readonly JudgedModel[];
  readonly rule: Rule;
  readonly standing: Standing;
}

/** Most models named in a cell; the others are counted. */
const NAMED = 6;

function Who({ judged, rule, standing: wanted }: WhoProps) {
  const who = judged.filter(({ findings }) => standing(findings, rule, wanted) > 0);
  if (who.length === 0) return <span className="text-ink-soft">nobody</span>;
  return (
    <span className="flex flex-wrap gap-x-3 gap-y-1">
      {who.slice(0, NAMED).map(({ model }) => (
        <Link
          key={model.modelId}
          href={`/models/${model.modelId}#findings`}
          prefetch={false}
          className="underline underline-offset-4"
        >
          {model.modelName} {model.revisionLetter}
        </Link>
      ))}
      {who.length > NAMED && <span>and {who.length - NAMED} more</span>}
    </span>
  );
}
