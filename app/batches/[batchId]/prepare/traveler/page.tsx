import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import QRCode from 'qrcode';
import { now } from '@/app/_server/clock';
import { loadPreparePage } from '@/app/_server/prepare-page';
import { currentShop } from '@/app/_server/shop';
import { Caution } from '@/app/_ui/caution';
import { dayText } from '@/app/_ui/day-text';
import { Page, Section } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { whenText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { CardAndCuts } from '../_components/card-and-cuts';

export const metadata: Metadata = { title: 'Traveler' };

/** The printed card that goes along with a batch; its code opens the batch on a phone. */
export default async function TravelerPage({ params }: PageProps<'/batches/[batchId]/prepare/traveler'>) {
  const { batchId } = await params;
  const nowAt = now();
  const [shop, database, request] = await Promise.all([currentShop(), db(), headers()]);
  const loaded = await loadPreparePage(database, batchId);
  if (loaded === null || loaded.stored === null) notFound();
  const { head, revision, stored } = loaded;
  const host = request.get('x-forwarded-host') ?? request.get('host') ?? 'localhost';
  const address = `${request.get('x-forwarded-proto') ?? 'http'}://${host}/batches/${batchId}`;
  const { modules } = QRCode.create(address, { errorCorrectionLevel: 'M' });
  const topics = [...new Set(revision.operations.map(({ caution }) => caution))];
  return (
    <Page
      title={`Traveler, batch ${head.number}`}
      lead={`${head.modelName}, revision ${head.letter}, ${head.quantity} pieces.${
        head.dueOn === null ? '' : ` Due ${dayText(head.dueOn)}.`
      } ${head.orderNote} Planned ${whenText(stored.madeAt, nowAt, shop.timeZone)}.`}
      up={{ href: `/batches/${batchId}/prepare`, label: 'Prepare' }}
      actions={<PrintButton />}
    >
      <figure className="flex flex-wrap items-center gap-4">
        <QrCode size={modules.size} isDark={(row, column) => modules.get(row, column) === 1} />
        <figcaption className="text-sm break-all">Opens the batch: {address}</figcaption>
      </figure>
      <Section title="Operations">
        <table className="w-full border-collapse text-left">
          <thead>
            <tr className="border-b-2 border-line-strong text-sm">
              <th scope="col" className="py-2 pr-3">
                Operation
              </th>
              <th scope="col" className="px-3 py-2">
                With
              </th>
              <th scope="col" className="py-2 pl-3">
                Done, pieces
              </th>
            </tr>
          </thead>
          <tbody>
            {revision.operations.map((operation) => (
              <tr key={operation.id} className="border-b border-line">
                <th scope="row" className="py-3 pr-3 font-semibold">
                  {operation.name}
                </th>
                <td className="px-3 py-3">{operation.material?.name ?? ''}</td>
                <td className="py-3 pl-3" />
              </tr>
            ))}
          </tbody>
        </table>
      </Section>
      <Section title="Pieces" lead="Cross out a piece that is scrapped.">
        <ol className="flex flex-wrap gap-1">
          {Array.from({ length: head.quantity }, (_, index) => index + 1).map((number) => (
            <li key={number} className="min-w-9 border border-line-strong p-1 text-center">
              {number}
            </li>
          ))}
        </ol>
      </Section>
      <CardAndCuts loaded={loaded} stored={stored} units={shop} action={null} weighAction={null} />
      <Section title="Cautions">
        {topics.map((topic) => (
          <Caution key={topic} topic={topic} isBrief />
        ))}
        <Caution topic="heat" />
      </Section>
    </Page>
  );
}

interface QrCodeProps {
  readonly size: number;
  readonly isDark: (row: number, column: number) => boolean;
}

/** Dark squares on white with the four empty squares round them that readers need (ISO/IEC 18004). */
function QrCode({ size, isDark }: QrCodeProps) {
  const squares = Array.from({ length: size * size }, (_, i) => [Math.floor(i / size), i % size] as const);
  const path = squares
    .filter(([row, column]) => isDark(row, column))
    .map(([row, column]) => `M${column} ${row}h1v1h-1z`)
    .join('');
  return (
    <svg
      viewBox={`-4 -4 ${size + 8} ${size + 8}`}
      role="img"
      aria-label="Code that opens the batch on a phone"
      shapeRendering="crispEdges"
      className="size-36 shrink-0"
    >
      <rect x="-4" y="-4" width={size + 8} height={size + 8} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
