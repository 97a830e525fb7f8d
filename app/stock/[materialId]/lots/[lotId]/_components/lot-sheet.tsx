import { buttonClass } from '@/app/_ui/button-class';
import { dayText } from '@/app/_ui/day-text';
import { inputClass } from '@/app/_ui/input-class';
import type { Lot } from '@/prisma/data/lots';

const FAULTS: Readonly<Record<string, string>> = {
  'too-long': 'This file is longer than 10 MB. Nothing was kept.',
  empty: 'Choose a file first.',
  'bad-day': 'This day does not exist. Nothing was kept.',
  'wrong-kind': 'Only PDF, PNG and JPEG files are kept.',
  'no-lot': 'This lot is not in Stock any more.',
};

export interface LotSheetProps {
  readonly lot: Lot;
  /** Why the last file was not kept, by its code; empty: it was, or none came. */
  readonly fault: string;
}

/** The data sheet that came with a lot, and keeping one. */
export function LotSheet({ lot, fault }: LotSheetProps) {
  const address = `/stock/${lot.materialId}/lots/${lot.id}/sheet`;
  const message = FAULTS[fault];
  return (
    <div className="grid max-w-3xl gap-4">
      {lot.sheetName === null ? (
        <p className="text-ink-soft">None is kept. The product's data sheet rules over every figure here.</p>
      ) : (
        <p>
          <a href={address} download className="inline-flex min-h-touch items-center underline underline-offset-4">
            {lot.sheetName}
          </a>
          {lot.sheetOn === null ? '' : `, issued ${dayText(lot.sheetOn)}`}
        </p>
      )}
      {message !== undefined && (
        <p role="status" className="border-l-4 border-accent bg-accent-soft px-4 py-3 font-medium">
          {message}
        </p>
      )}
      <form action={address} method="post" encType="multipart/form-data" className="flex flex-wrap items-end gap-4">
        <label className="grid gap-1.5">
          <span className="font-semibold">Data sheet (PDF or picture)</span>
          <input type="file" name="file" accept=".pdf,.png,.jpg,.jpeg" className={inputClass} />
        </label>
        <label className="grid gap-1.5">
          <span className="font-semibold">Issued on (optional)</span>
          <input type="date" name="issuedOn" className={inputClass} />
        </label>
        <button type="submit" className={buttonClass('plain')}>
          Keep it
        </button>
      </form>
    </div>
  );
}
