import { batchRef } from '@/app/_bench/operation-buttons';
import { PotLifeWhy } from '@/app/_bench/pot-life-why';
import { QuarantineButton } from '@/app/_bench/quarantine-button';
import { noPotLifeText } from '@/app/_bench/running-mixes';
import type { BenchEntry } from '@/app/_server/bench';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import type { MixState } from '@/lib/batch/batch-state';
import type { ShopSettings } from '@/prisma/data/shop';

export interface MixTableProps {
  readonly entry: BenchEntry;
  readonly shop: ShopSettings;
  /** Codes of lots by id. */
  readonly lotCodes: ReadonlyMap<string, string>;
}

/** The mixes of a batch: what was in the cup, how long it could be used, and what came after that. */
export function MixTable({ entry, shop, lotCodes }: MixTableProps) {
  const { mixes } = entry.batch.state;
  const { words } = entry;
  if (mixes.length === 0) return <p className="text-ink-soft">No mix was made for this batch yet.</p>;
  const columns: readonly Column<MixState>[] = [
    { id: 'mix', title: 'Mix', cell: (mix) => `${mix.number}: ${words.operation(mix.operationId)}` },
    {
      id: 'cup',
      title: 'In the cup',
      cell: (mix) => `${words.mass(mix.massG)} ${mix.materialName} at ${words.temperature(mix.temperatureC)}`,
    },
    {
      id: 'lots',
      title: 'Lots',
      cell: (mix) => mix.lotIds.map((id) => lotCodes.get(id) ?? 'a removed lot').join(', ') || 'not noted',
    },
    {
      id: 'time',
      title: 'Mixed to closed',
      cell: (mix) =>
        `${words.time(mix.mixedAt)} to ${mix.closedAt === null ? 'now running' : words.time(mix.closedAt)}`,
    },
    {
      id: 'life',
      title: 'Pot life',
      cell: (mix) =>
        mix.potLife.ok ? (
          <>
            to {words.time(mix.potLife.lowerAt)}, about {words.time(mix.potLife.centralAt)}
            <PotLifeWhy mix={mix} time={words.time} massUnit={shop.massUnit} temperatureUnit={shop.temperatureUnit} />
          </>
        ) : (
          noPotLifeText(mix.potLife.code)
        ),
    },
    {
      id: 'used',
      title: 'Used on',
      cell: (mix) => (
        <>
          {mix.coatCount > 0
            ? `${mix.coatCount} ${mix.coatCount === 1 ? 'piece' : 'pieces'}`
            : jointText(mix.jointCount)}
          {mix.lateCount > 0 && (
            <>
              {' '}
              <StatusMark status="late">{mix.lateCount} late</StatusMark>
            </>
          )}
        </>
      ),
    },
  ];
  const doubt: Column<MixState> = {
    id: 'doubt',
    title: 'In doubt',
    cell: (mix) =>
      mix.quarantine === null ? (
        <QuarantineButton batch={batchRef(entry)} mixId={mix.mixId} mixNumber={mix.number} />
      ) : (
        <StatusMark status="held">{mix.quarantine.reason}</StatusMark>
      ),
  };
  return <Table caption="Mixes" columns={[...columns, doubt]} rows={mixes} rowKey={(mix) => mix.mixId} />;
}

function jointText(count: number): string {
  return count === 0 ? 'nothing' : `${count} ${count === 1 ? 'joint' : 'joints'}`;
}
