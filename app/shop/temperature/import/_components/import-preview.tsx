import type { PreviewView } from '@/app/_import/import-view';
import { Section } from '@/app/_ui/page';
import { Table } from '@/app/_ui/table';

export interface ImportPreviewProps {
  readonly preview: PreviewView;
  /** Whether a question is open, so that what is shown may still change. */
  readonly isProvisional: boolean;
}

/** How a file was understood: points, counts, first rows, and what was refused. */
export function ImportPreview({ preview, isProvisional }: ImportPreviewProps) {
  const { understood, counts, firstRows, notes, refused, refusedBy } = preview;
  const refusedCount = refusedBy.reduce((sum, { count }) => sum + count, 0);
  return (
    <>
      <Section
        title="How it was understood"
        lead={
          isProvisional
            ? 'For now; the answers above may change it.'
            : 'Compare the first rows with what you know of the log.'
        }
      >
        <Table
          caption="The first rows, as they stand in the file and as they were read"
          rows={firstRows}
          rowKey={(row) => String(row.line)}
          columns={[
            { id: 'line', title: 'Line', cell: (row) => `Line ${row.line}` },
            { id: 'text', title: 'In the file', cell: (row) => <code className="break-all text-sm">{row.text}</code> },
            { id: 'at', title: 'Read as', cell: (row) => row.at },
            { id: 'temperature', title: 'Temperature', cell: (row) => row.temperature, isNumber: true },
          ]}
        />
        <div className="grid items-start gap-6 md:grid-cols-2">
          <Points title="Understood" points={understood} />
          <Points title="Lines" points={counts} />
        </div>
        {notes.length > 0 && (
          <ul className="grid max-w-3xl list-disc gap-1 pl-5">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
      </Section>
      {refusedCount > 0 && (
        <Section title="Refused rows" lead="They stay out. All others are taken in.">
          <Points
            title="Why"
            points={refusedBy.map(({ reason, count }) => ({ label: reason, value: String(count) }))}
          />
          <details>
            <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
              {refused.length < refusedCount ? `The first ${refused.length} of ${refusedCount}` : 'Show them'}
            </summary>
            <Table
              caption="Refused rows"
              rows={refused}
              rowKey={(row) => String(row.line)}
              columns={[
                { id: 'line', title: 'Line', cell: (row) => `Line ${row.line}` },
                { id: 'reason', title: 'Why', cell: (row) => row.reason },
                {
                  id: 'text',
                  title: 'In the file',
                  cell: (row) => <code className="break-all text-sm">{row.text}</code>,
                },
              ]}
            />
          </details>
        </Section>
      )}
    </>
  );
}

function Points({
  title,
  points,
}: {
  readonly title: string;
  readonly points: readonly { readonly label: string; readonly value: string }[];
}) {
  return (
    <div className="grid gap-2">
      <h3 className="font-bold">{title}</h3>
      <dl className="grid gap-1">
        {points.map(({ label, value }) => (
          <div key={label} className="flex flex-wrap justify-between gap-x-4 border-b border-line py-1">
            <dt className="text-ink-soft">{label}</dt>
            <dd className="min-w-0 font-medium break-words">{value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
