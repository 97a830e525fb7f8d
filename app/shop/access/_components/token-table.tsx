import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import { dateText, whenText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import type { AccessTokenLine } from '@/prisma/data/access-tokens';
import { revokeTokenAction } from '../actions';
import { SCOPE_WORDS } from './scope-words';

export interface TokenTableProps {
  readonly tokens: readonly AccessTokenLine[];
  readonly zone: string;
  readonly nowAt: Instant;
}

/** The tokens that were made, with what they may do and whether they still can. */
export function TokenTable({ tokens, zone, nowAt }: TokenTableProps) {
  return (
    <Table
      caption="Tokens"
      rows={tokens}
      rowKey={(token) => token.id}
      columns={[
        { id: 'name', title: 'Name', cell: (token) => token.name },
        {
          id: 'scope',
          title: 'May',
          cell: (token) => `${SCOPE_WORDS[token.scope]}${token.sensorName === null ? '' : ` of ${token.sensorName}`}`,
        },
        { id: 'made', title: 'Made', cell: (token) => dateText(token.createdAt, zone) },
        {
          id: 'used',
          title: 'Last used',
          cell: (token) => (token.lastUsedAt === null ? 'never' : whenText(token.lastUsedAt, nowAt, zone)),
        },
        { id: 'state', title: 'State', cell: (token) => <TokenState token={token} zone={zone} nowAt={nowAt} /> },
        {
          id: 'revoke',
          title: 'Revoke',
          cell: (token) => (token.revokedAt === null ? <Revoke token={token} /> : '–'),
        },
      ]}
    />
  );
}

interface TokenStateProps {
  readonly token: AccessTokenLine;
  readonly zone: string;
  readonly nowAt: Instant;
}

function TokenState({ token, zone, nowAt }: TokenStateProps) {
  if (token.revokedAt !== null)
    return <StatusMark status="scrapped">Revoked {dateText(token.revokedAt, zone)}</StatusMark>;
  if (token.expiresAt === null) return <StatusMark status="ready">In use</StatusMark>;
  // It expires with the end of its last day: a moment before still is that day.
  const lastDay = dateText(token.expiresAt - 1, zone);
  if (token.expiresAt <= nowAt) return <StatusMark status="expired">Expired {lastDay}</StatusMark>;
  return <StatusMark status="ready">Until {lastDay}</StatusMark>;
}

function Revoke({ token }: { readonly token: AccessTokenLine }) {
  return (
    <DialogButton
      label={
        <>
          Revoke<span className="sr-only"> {token.name}</span>
        </>
      }
      title={`Revoke ${token.name}?`}
      weight="quiet"
    >
      <ActionForm action={revokeTokenAction.bind(null, token.id)}>
        <p>
          From then on nothing can be written with it. What was written stays. It cannot be taken back: make a new one.
        </p>
        <div>
          <SubmitButton weight="remove" pendingText="Revoking…">
            Revoke it
          </SubmitButton>
        </div>
      </ActionForm>
    </DialogButton>
  );
}
