import { createHash } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { AwsV4Signer } from "aws4fetch";

export const s3Keys = { accessKeyId: "tester", secretAccessKey: "not-a-secret" } as const;

export interface S3Stub {
  readonly endpoint: string;
  /** What lies in it, by path. */
  readonly objects: Map<string, Buffer>;
  /** Method and path of every request, in order. */
  readonly asked: string[];
  /** What it answers next instead of doing anything: a status, or nothing at all ("broken"). */
  readonly failNext: (number | "broken")[];
  close(): Promise<void>;
}

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts);
}

/** Whether the request is signed by our keys, over the body it has (AWS Signature Version 4). */
async function isSigned(request: IncomingMessage, body: Buffer): Promise<boolean> {
  const said = request.headers["x-amz-content-sha256"];
  if (said !== sha256(body)) return false;
  const signed = /SignedHeaders=([^,]+)/.exec(request.headers.authorization ?? "")?.[1]?.split(";") ?? [];
  const headers: Record<string, string> = {};
  for (const name of signed) if (name !== "host") headers[name] = String(request.headers[name] ?? "");
  const { "x-amz-date": datetime = "" } = headers;
  const signer = new AwsV4Signer({
    ...{ ...s3Keys, method: request.method ?? "GET", headers, service: "s3", region: "us-east-1", datetime },
    url: `http://${request.headers.host}${request.url}`,
  });
  return (await signer.sign()).headers.get("authorization") === request.headers.authorization;
}

/**
 * A strict stand-in for a bucket, for the quick run: it takes nothing that is not signed over its own bytes, knows the
 * conditional put and ranges, and has no way of listing. The long run asks a real one (`ceph-gateway.sh`).
 */
export async function startS3Stub(): Promise<S3Stub> {
  const objects = new Map<string, Buffer>();
  const [asked, failNext]: [string[], (number | "broken")[]] = [[], []];
  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const path = request.url ?? "";
    asked.push(`${request.method} ${path}`);
    const body = await bodyOf(request);
    const fail = failNext.shift();
    if (fail === "broken") return void response.destroy();
    if (fail !== undefined) return void response.writeHead(fail).end("as told");
    if (!(await isSigned(request, body))) return void response.writeHead(403).end("SignatureDoesNotMatch");
    const there = objects.get(path);
    if (request.method === "PUT") {
      if (there && request.headers["if-none-match"] === "*") return void response.writeHead(412).end();
      objects.set(path, body);
      return void response.writeHead(200).end();
    }
    if (request.method === "DELETE") {
      objects.delete(path);
      return void response.writeHead(204).end();
    }
    if (!there) return void response.writeHead(404).end("NoSuchKey");
    const [, from, to] = /^bytes=(\d+)-(\d*)$/.exec(request.headers.range ?? "") ?? [];
    const end = to === undefined || to === "" ? there.length - 1 : Math.min(Number(to), there.length - 1);
    const part = from === undefined ? there : there.subarray(Number(from), end + 1);
    const range = from === undefined ? {} : { "content-range": `bytes ${from}-${end}/${there.length}` };
    response.writeHead(from === undefined ? 200 : 206, { "content-length": part.length, ...range });
    response.end(request.method === "HEAD" ? undefined : part);
  };
  const server = createServer((request, response) => void answer(request, response));
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    ...{ endpoint: `http://127.0.0.1:${port}`, objects, asked, failNext },
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** Tells this process of a store, as the environment of a server would. Answers how to take it back. */
export function tellS3(endpoint: string, secretAccessKey: string = s3Keys.secretAccessKey): () => void {
  const told = {
    TOELINE_S3_ENDPOINT: endpoint,
    AWS_ACCESS_KEY_ID: s3Keys.accessKeyId,
    AWS_SECRET_ACCESS_KEY: secretAccessKey,
  };
  const before = Object.keys(told).map((name) => [name, process.env[name]] as const);
  Object.assign(process.env, told);
  return () => {
    for (const [name, value] of before)
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
  };
}
