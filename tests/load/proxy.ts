import { Agent, createServer, request as ask, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";

export interface Proxy {
  readonly url: string;
  close(): Promise<void>;
}

/** Says of a 502 that it is the proxy's: no server answered. */
export const BROKE = "x-no-answer";

/**
 * What stands in front of several servers: each request goes to the next of them, as it came. Where a server breaks off or is
 * away, whoever asked is told so: nothing is asked again here.
 */
export async function startProxy(urls: readonly string[]): Promise<Proxy> {
  const agent = new Agent({ keepAlive: true });
  let turn = 0;
  const pass = (from: IncomingMessage, to: ServerResponse): void => {
    const { hostname, port } = new URL(urls[(turn += 1) % urls.length] ?? "");
    const { method = "GET", url: path = "/", headers } = from;
    const broken = (): void => {
      if (to.headersSent) return void to.destroy();
      to.writeHead(502, { [BROKE]: "1", connection: "close" }).end();
    };
    const sent = ask({ agent, host: hostname, port, method, path, headers }, (answer) => {
      to.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.on("error", broken);
      answer.pipe(to);
    });
    sent.on("error", broken);
    from.pipe(sent);
  };
  const server = createServer(pass);
  // A connection that rests is not closed under somebody's next request.
  server.keepAliveTimeout = 300_000;
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    async close() {
      agent.destroy();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
