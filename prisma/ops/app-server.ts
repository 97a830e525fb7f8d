import { once } from 'node:events';
import type { Server } from 'node:http';
import { createServer } from 'node:http';
import { ROOT } from './schema-text';
import { StartRefusal } from './start-refusal';

/** Longest that running requests are waited for when the server is stopped, in ms. */
const STOP_WITHIN_MS = 10_000;

export interface AppServer {
  /** Address to open in a browser. */
  readonly address: string;
  /** Takes no new requests, lets running ones end, and cuts off those that take longer than 10 seconds. */
  stop(): Promise<void>;
}

/** Throws a StartRefusal when nobody could listen at this address now. */
export async function refuseTakenPort(host: string, port: number): Promise<void> {
  const probe = createServer();
  await listenOrRefuse(probe, host, port);
  probe.close();
  await once(probe, 'close');
}

/** Serves the built pages from this very process. Resolves when it listens. */
export async function serveApp(host: string, port: number): Promise<AppServer> {
  const { default: next } = await import('next');
  const app = next({ dev: false, dir: ROOT, hostname: host, port });
  await app.prepare();
  const handle = app.getRequestHandler();
  const server = createServer((request, response) => {
    handle(request, response).catch((error: unknown) => {
      console.error(error);
      response.destroy();
    });
  });
  await listenOrRefuse(server, host, port);
  return {
    address: `http://${host.includes(':') ? `[${host}]` : host}:${port}`,
    stop: async () => {
      const closed = once(server, 'close');
      server.close();
      // A browser keeps its connection open after the last answer.
      const closeIdle = setInterval(() => server.closeIdleConnections(), 100);
      const cutOff = setTimeout(() => server.closeAllConnections(), STOP_WITHIN_MS);
      await closed;
      clearTimeout(cutOff);
      clearInterval(closeIdle);
      await app.close();
    },
  };
}

async function listenOrRefuse(server: Server, host: string, port: number): Promise<void> {
  server.listen(port, host);
  try {
    await once(server, 'listening');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : null;
    throw new StartRefusal(listenMessage(code, host, port, error));
  }
}

function listenMessage(code: unknown, host: string, port: number, error: unknown): string {
  switch (code) {
    case 'EADDRINUSE':
      return `Port ${port} on ${host} is already taken by another program. Stop that program, or choose another port: PORT=${port + 1} npm start`;
    case 'EACCES':
      return `This user may not listen on port ${port}. Choose a port above 1023: PORT=3000 npm start`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `This computer has no address ${host}. Set HOST to 127.0.0.1 for this computer only, or to 0.0.0.0 for the whole network.`;
    default:
      return `Cannot listen on ${host}:${port}: ${error instanceof Error ? error.message : String(error)}`;
  }
}
