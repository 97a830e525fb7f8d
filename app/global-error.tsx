'use client';

import './globals.css';

/** Shown when even the frame of the pages failed: most likely the database cannot be read. */
export default function GlobalError({ error }: { readonly error: Error & { readonly digest?: string } }) {
  return (
    <html lang="en">
      <body className="mx-auto grid max-w-2xl content-start justify-items-start gap-4 px-4 py-12">
        <title>Lurewright cannot read its records</title>
        <h1 className="text-3xl font-bold">Lurewright cannot read its records</h1>
        <p>
          Nothing was changed. Look at the window or the log where the server runs: it says what is wrong
          {error.digest === undefined ? '.' : ` (${error.digest}).`}
        </p>
        <a href="/" className="min-h-touch py-2 font-semibold underline">
          Try again
        </a>
      </body>
    </html>
  );
}
