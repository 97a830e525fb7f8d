import 'server-only';

export type JsonBody =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly status: 400 | 413 | 415; readonly code: string; readonly message: string };

/** The JSON of a request, read no further than `mostBytes`, however long the sender says it is. */
export async function readJsonBody(request: Request, mostBytes: number): Promise<JsonBody> {
  if (!(request.headers.get('content-type') ?? '').startsWith('application/json')) {
    return { ok: false, status: 415, code: 'not-json', message: 'Send the body as application/json.' };
  }
  const parts: Uint8Array[] = [];
  let size = 0;
  for await (const part of chunksOf(request)) {
    size += part.length;
    if (size > mostBytes) {
      const message = `This body is longer than ${mostBytes} bytes. Send it in several parts.`;
      return { ok: false, status: 413, code: 'too-long', message };
    }
    parts.push(part);
  }
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false, status: 400, code: 'not-json', message: 'The body is not valid JSON in UTF-8.' };
  }
}

/** The body of a request as it comes in. Ending the loop early tells the sender to stop. */
export async function* chunksOf(request: Request): AsyncGenerator<Uint8Array> {
  if (request.body === null) return;
  const reader = request.body.getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel().catch(() => {}); // a sender that hung up has nothing to be told
  }
}
