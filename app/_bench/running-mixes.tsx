import type { MixState } from '@/lib/batch/batch-state';
import type { RunningMix } from '@/lib/batch/bench-entries';
import type { ShopSettings } from '@/prisma/data/shop';
import type { Bench } from '../_server/bench';
import { CloseButton, doablePieces, UseMixButton } from './operation-buttons';
import { PotLifeCard } from './pot-life-card';
import { PotLifeWhy } from './pot-life-why';

/** The mixes that are running, the one that ends first in front. Nothing when none is. */
export function RunningMixes({ bench, shop }: { readonly bench: Bench; readonly shop: ShopSettings }) {
  const { shown, more } = bench.view.runningMixes;
  if (shown.length === 0) return null;
  return (
    <section aria-label="Running mixes" className="grid grid-cols-[repeat(auto-fit,minmax(min(100%,18rem),1fr))] gap-4">
      {shown.map((running) => (
        <MixCard key={running.mixId} bench={bench} shop={shop} running={running} />
      ))}
      {more > 0 && <p className="self-center">and {more} more mixes that are not closed: see their batches.</p>}
    </section>
  );
}

interface MixCardProps {
  readonly bench: Bench;
  readonly shop: ShopSettings;
  readonly running: RunningMix;
}

function MixCard({ bench, shop, running }: MixCardProps) {
  const entry = bench.entryOf(running.batchId);
  const { batch, head, words } = entry;
  const mix = batch.state.mixes.find(({ mixId }) => mixId === running.mixId);
  if (mix === undefined) return null;
  const { potLife } = mix;
  return (
    <PotLifeCard
      mixId={mix.mixId}
      title={`Mix ${mix.number}, batch ${head.number}`}
      about={`${mix.materialName}, ${words.mass(mix.massG)} for ${words.operation(mix.operationId)}, ${head.modelName}. ${usedText(mix)}`}
      mixedAt={mix.mixedAt}
      ends={potLife.ok ? { lowerAt: potLife.lowerAt, centralAt: potLife.centralAt } : null}
      whyNot={potLife.ok ? null : noPotLifeText(potLife.code)}
      actions={
        <>
          <UseMixButton entry={entry} mixId={mix.mixId} pieces={doablePieces(entry, mix.operationId)} />
          <CloseButton entry={entry} mixId={mix.mixId} mixNumber={mix.number} />
        </>
      }
      why={<PotLifeWhy mix={mix} time={words.time} massUnit={shop.massUnit} temperatureUnit={shop.temperatureUnit} />}
    />
  );
}

function usedText({ jointCount, coatCount }: MixState): string {
  if (jointCount > 0) return `${jointCount} ${jointCount === 1 ? 'joint' : 'joints'} so far.`;
  return coatCount > 0 ? `On ${coatCount} ${coatCount === 1 ? 'piece' : 'pieces'} so far.` : 'Not used yet.';
}

/** Why a mix has no countdown. */
export function noPotLifeText(code: Extract<MixState['potLife'], { ok: false }>['code']): string {
  switch (code) {
    case 'no-pot-life':
      return 'Its data sheet gives no pot life.';
    case 'points-contradict':
      return 'The pot lives of its data sheet contradict each other.';
    case 'bad-figures':
      return 'The figures of its data sheet cannot be computed with.';
  }
}
