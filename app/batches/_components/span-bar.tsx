interface SpanBarProps {
  /** In percent of the width. */
  readonly from: number;
  readonly to: number;
  readonly className: string;
}

/** A bar of the timeline's row; never thinner than can be seen. */
export function SpanBar({ from, to, className }: SpanBarProps) {
  return <rect x={`${from}%`} width={`${Math.max(to - from, 0.4)}%`} y="20" height="16" rx="2" className={className} />;
}
