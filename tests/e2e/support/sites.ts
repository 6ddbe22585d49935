import { spawn } from "node:child_process";
import { request as ask, type IncomingMessage } from "node:http";
import { connect } from "node:net";
import { fileURLToPath } from "node:url";
import { PATIENT_MS } from "../../setup/patience";
import { ended, freePort } from "./server";

const root = fileURLToPath(new URL("../../..", import.meta.url));

export interface Answered {
  readonly status: number;
  readonly headers: IncomingMessage["headers"];
  readonly text: string;
}
interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

export interface SitesServer {
  readonly port: number;
  pid(): number;
  /** Asks for an address by the name of a site, as a browser does whom the name has led here. */
  ask(host: string, at: string, asking?: Asking): Promise<Answered>;
  /** Sends these very lines as the head of a request; what the first line of the answer is. */
  sendHead(...lines: readonly string[]): Promise<string>;
  /** Begins to read an answer and breaks off. */
  breakOff(host: string, at: string, headers: Readonly<Record<string, string>>): Promise<void>;
  stop(): Promise<void>;
}

/** The built server for several sites, with what it is told by `env`. */
export async function startSites(env: Readonly<Record<string, string>>): Promise<SitesServer> {
  const port = await freePort();
  const child = spawn(process.execPath, ["lib/cli/serve-sites.mjs"], {
    cwd: root,
    // It says of each refused action that it was: a test that sends a hundred reads nothing else.
    stdio: ["ignore", "ignore", "ignore"],
    env: {
      ...process.env,
      NEXT_TELEMETRY_DISABLED: "1",
      TOELINE_ACCOUNTS: "required",
      ...env,
      PORT: String(port),
    },
  });
  const asks = (host: string, at: string, { method = "GET", headers = {}, body }: Asking = {}) =>
    new Promise<Answered>((resolve, reject) => {
      const sent = ask(
        { host: "127.0.0.1", port, path: at, method, agent: false, headers: { host, ...headers } },
        (answer) => {
          const parts: Buffer[] = [];
          answer.on("data", (part: Buffer) => parts.push(part));
          answer.on("error", reject);
          answer.on("end", () =>
            resolve({
              status: answer.statusCode ?? 0,
              headers: answer.headers,
              text: Buffer.concat(parts).toString("latin1"),
            }),
          );
        },
      );
      sent.on("error", reject);
      sent.end(body);
    });
  const until = Date.now() + PATIENT_MS;
  while (!(await asks("127.0.0.1", "/api/health").catch(() => null))) {
    if (child.exitCode !== null) throw new Error(`the server ended with code ${child.exitCode}`);
    if (Date.now() > until) throw new Error("the server did not answer");
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return {
    port,
    pid: () => child.pid ?? 0,
    ask: asks,
    sendHead: (...lines) =>
      new Promise((resolve, reject) => {
        const socket = connect(port, "127.0.0.1", () => socket.write(`${lines.join("\r\n")}\r\n\r\n`));
        let got = "";
        socket.on("data", (part) => (got += part.toString("latin1")));
        socket.on("end", () => resolve(got.split("\r\n")[0] ?? ""));
        socket.on("error", reject);
      }),
    breakOff: (host, at, headers) =>
      new Promise((resolve, reject) => {
        const sent = ask(
          { host: "127.0.0.1", port, path: at, agent: false, headers: { host, ...headers } },
          (answer) => {
            answer.once("data", () => {
              answer.destroy();
              resolve();
            });
            answer.once("error", () => resolve());
          },
        );
        sent.on("error", reject);
        sent.end();
      }),
    stop: () => ended(child),
  };
}
