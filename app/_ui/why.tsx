import type { ReactNode } from 'react';

export interface WhyProps {
  /** What the number answers, for those who only hear the page: "why 19:40". */
  readonly about: string;
  readonly formula?: ReactNode;
  readonly inputs?: readonly { readonly label: string; readonly value: ReactNode }[];
  readonly source?: ReactNode;
  readonly assumption?: ReactNode;
  readonly uncertainty?: ReactNode;
}

/** Behind every number a maker may act on: how it was found, from what, and how far it may be off. */
export function Why({ about, formula, inputs = [], source, assumption, uncertainty }: WhyProps) {
  return (
    <details className="text-sm">
      <summary className="inline-flex min-h-touch min-w-touch items-center font-semibold text-ink-soft underline decoration-line-strong underline-offset-4 hover:text-ink">
        Why?<span className="sr-only"> {about}</span>
      </summary>
      <dl className="mt-1 mb-3 grid gap-2 border-l-2 border-line-strong pl-4">
        {formula !== undefined && <Item term="Formula">{formula}</Item>}
        {inputs.map((input) => (
          <Item key={input.label} term={input.label}>
            {input.value}
          </Item>
        ))}
        {source !== undefined && <Item term="Source">{source}</Item>}
        {assumption !== undefined && <Item term="Assumption">{assumption}</Item>}
        {uncertainty !== undefined && <Item term="Uncertainty">{uncertainty}</Item>}
      </dl>
    </details>
  );
}

function Item({ term, children }: { readonly term: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt className="font-semibold">{term}</dt>
      <dd className="text-ink-soft">{children}</dd>
    </div>
  );
}
