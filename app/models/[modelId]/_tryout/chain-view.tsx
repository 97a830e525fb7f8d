import type { AnchorFacts } from '@/lib/spec/anchor-facts';
import type { ModelFacts } from '@/lib/spec/model-facts';
import { type ChainLinkName, chainStrength } from '@/lib/strength/chain-strength';
import { forceText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface ChainViewProps {
  readonly facts: AnchorFacts;
  readonly model: ModelFacts;
  readonly units: UnitChoice;
}

const LINK_WORDS: { readonly [N in ChainLinkName]: string } = {
  line: 'line at its knot',
  'split-ring': 'split ring',
  hook: 'hook',
  eye: 'eye',
  anchor: 'anchor in the wood',
};

/** The links from the line to the wood in a straight pull, each as long as it is strong, and which goes first. */
export function ChainView({ facts, model, units }: ChainViewProps) {
  const { splitRing, hook } = facts.anchor;
  const fitting = (of: typeof hook) => (of === null ? null : { statedStrengthN: of.sheet?.statedStrengthN ?? null });
  const chain = chainStrength({
    line: model.line,
    splitRing: fitting(splitRing),
    hook: fitting(hook),
    anchor: facts.of.strength,
  });
  const strongest = Math.max(1, ...chain.links.map(({ lowerN }) => lowerN ?? 0));
  const isAllKnown = chain.links.every(({ lowerN }) => lowerN !== null);
  const force = (loadN: number) => forceText(loadN, units.forceUnit);
  return (
    <div className="grid gap-2">
      <ol className="grid gap-1.5">
        {chain.links.map((link) => {
          const isFirst = link === chain.goesFirst;
          return (
            <li key={link.name} className="grid grid-cols-[8.5rem_1fr] items-center gap-x-3">
              <span className={isFirst ? 'font-bold' : ''}>{LINK_WORDS[link.name]}</span>
              {link.lowerN === null ? (
                <span className="text-ink-soft">not known</span>
              ) : (
                <span className="flex min-w-0 items-center gap-2">
                  <svg
                    viewBox="0 0 100 12"
                    preserveAspectRatio="none"
                    aria-hidden="true"
                    className="h-3 min-w-0 flex-1"
                  >
                    <rect
                      width={Math.max(1, (100 * link.lowerN) / strongest)}
                      height="12"
                      className={isFirst ? 'fill-accent' : 'fill-line-strong'}
                    />
                  </svg>
                  <span className="w-20 shrink-0 text-right">{force(link.lowerN)}</span>
                </span>
              )}
              {isFirst && (
                <span className="col-start-2 text-sm font-semibold text-accent">
                  ◂ goes first{isAllKnown ? '' : ' of those known'}
                </span>
              )}
            </li>
          );
        })}
      </ol>
      <p className="text-sm text-ink-soft">
        {verdict(chain.isLineTheFuse)}
        {chain.linePullsN !== null &&
          ` A strong spool of this line may pull up to ${force(chain.linePullsN)} at the knot.`}
      </p>
    </div>
  );
}

function verdict(isLineTheFuse: boolean | null): string {
  if (isLineTheFuse === null) return 'Whether the line would go before all else is not known: a link is missing.';
  return isLineTheFuse
    ? 'The line goes before anything of the lure, even a strong spool of it.'
    : 'Something of the lure can go before the line.';
}
