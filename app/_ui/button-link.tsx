import Link from 'next/link';
import type { ReactNode } from 'react';
import type { ButtonWeight } from './button-class';
import { buttonClass } from './button-class';

export interface ButtonLinkProps {
  readonly href: string;
  readonly weight?: ButtonWeight;
  readonly children: ReactNode;
}

/** A link with the look and the touch size of a button. */
export function ButtonLink({ href, weight = 'plain', children }: ButtonLinkProps) {
  return (
    <Link href={href} prefetch={false} className={buttonClass(weight)}>
      {children}
    </Link>
  );
}
