import { existsSync, readdirSync } from "node:fs";
import path from "node:path";

const root = path.join(import.meta.dirname, "../../..");

/** The part of an OpenAPI document that these tests read. */
export interface Described {
  readonly operationId: string;
  readonly security: readonly { readonly token?: readonly string[] }[];
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema?: { $ref: string } }>> }>
  >;
}
export interface ApiDocument {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Described>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Record<string, unknown>>> };
}

type Handler = (
  request: Request,
  context: { params: Promise<Record<string, string>> },
) => Response | Promise<Response>;

/** Which described address this one is, and what stands in its places. */
function addressOf(document: ApiDocument, asked: string): { at: string; params: Record<string, string> } {
  // What has no places wins, as in the file system.
  const known = Object.keys(document.paths).sort((a, b) => a.split("{").length - b.split("{").length);
  for (const at of known) {
    const names = [...at.matchAll(/\{(\w+)\}/g)].map(([, name = ""]) => name);
    const found = new RegExp(`^${at.replace(/\./g, "\\.").replace(/\{\w+\}/g, "([^/]+)")}$`).exec(asked);
    if (found) return { at, params: Object.fromEntries(names.map((name, i) => [name, found[i + 1] ?? ""])) };
  }
  throw new Error(`not described: ${asked}`);
}

/** Every method of every route file there is, as the document is to name them. */
export async function methodsThere(): Promise<readonly string[]> {
  const files = readdirSync(path.join(root, "app/api"), { recursive: true, encoding: "utf8" });
  const found: string[] = [];
  for (const file of files.filter((one) => path.basename(one) === "route.ts")) {
    const route = (await import(/* @vite-ignore */ path.join(root, "app/api", file))) as object;
    const at = `/api/${path.dirname(file)}`.replace(/\[(\w+)\]/g, "{$1}");
    const methods = Object.keys(route).filter((name) => /^[A-Z]+$/.test(name));
    found.push(...methods.map((method) => `${method.toLowerCase()} ${at}`));
  }
  return found.sort();
}

/** Answers a request with the route handler of its address, as the server would. */
export async function ask(document: ApiDocument, request: Request): Promise<Response> {
  const { at, params } = addressOf(document, decodeURIComponent(new URL(request.url).pathname));
  const file = path.join(root, "app", at.replace(/\{(\w+)\}/g, "[$1]"), "route.ts");
  if (!existsSync(file)) throw new Error(`no route: ${file}`);
  const route = (await import(/* @vite-ignore */ file)) as Record<string, Handler | undefined>;
  const handler = route[request.method];
  if (!handler) throw new Error(`no ${request.method} ${at}`);
  return handler(request, { params: Promise.resolve(params) });
}
