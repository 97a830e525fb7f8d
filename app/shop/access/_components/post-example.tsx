/** The one line a logger or a script needs. */
export function PostExample({ origin }: { readonly origin: string }) {
  return (
    <div className="grid max-w-3xl gap-3">
      <p>
        One reading or a list of them, each with its instant and its temperature. The same reading sent twice counts
        once, so a logger may send again whatever was not answered.
      </p>
      <pre
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        className="overflow-x-auto rounded-sheet border border-line bg-sheet p-4 text-sm"
      >
        <code>{`curl -X POST ${origin}/api/v1/readings \\
  -H "Authorization: Bearer lw_..." \\
  -H "Content-Type: application/json" \\
  -d '{"at":"2026-03-12T19:40:00Z","temperatureC":17.5}'`}</code>
      </pre>
      <p className="text-sm text-ink-soft">
        The answer says how many were new and how many were there already. A list is taken in whole or not at all: when
        something in it is wrong, the answer names it. temperatureF and humidityPct may be sent as well.
      </p>
    </div>
  );
}
