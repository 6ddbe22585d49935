/**
 * Serves several sites from one process: decides by the name a request asks for whose it is, before anything else looks at
 * it, and does all that follows for that site alone (`inSite`). What is no site's is answered here. Begun by `npm start`
 * where TOELINE_SITES is set.
 */
import { randomBytes } from "node:crypto";
import { createServer } from "node:http";
import { fileURLToPath } from "node:url";
import { siteOfRequest, valuesOf } from "../sites/host.mjs";
import { inSite } from "../sites/current.mjs";
import { loadSites } from "../sites/sites.mjs";
import { inUse, SERVING, takeLock } from "./data-lock.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const host = process.env.TOELINE_HOST || "127.0.0.1";
const port = Number(process.env.PORT);
const isLoopback = (address) => /^(?:::ffff:)?127\.\d+\.\d+\.\d+$|^::1$/.test(address ?? "");

/** Names of sites that are not served, each with the sentence that says why. */
const shut = new Map(Object.entries(JSON.parse(process.env.TOELINE_SHUT || "{}")));
const sites = loadSites(process.env, root);
const trustsProxy = sites.every(({ origin }) => origin !== null);

/** A file has one server; a PostgreSQL has as many as it likes. Held until this process ends. */
async function lock(site) {
  if (shut.has(site.name) || !site.database.startsWith("file:")) return;
  try {
    if ((await takeLock(site.folder, SERVING)) === null) shut.set(site.name, inUse(site.folder));
  } catch (error) {
    shut.set(site.name, `The data folder ${site.folder} cannot be used (${error.message}).`);
  }
}

function say(response, status, text, type = "text/plain; charset=utf-8") {
  response.writeHead(status, {
    "content-type": type,
    "cache-control": "no-store",
    "x-content-type-options": "nosniff",
    connection: "close",
  });
  response.end(`${text}\n`);
}

/**
 * Whether this machine itself asks how it goes: through no proxy, which would hide that somebody else does. A foreign name can
 * be made to point here; the loopback's own name cannot be asked for from elsewhere.
 */
function asksForHealth({ url, method, headers, socket }) {
  if (url !== "/api/health" || method !== "GET" || !isLoopback(socket.remoteAddress)) return false;
  if (["forwarded", "x-forwarded-for", "x-forwarded-host"].some((name) => name in headers)) return false;
  return /^(?:127\.0\.0\.1|localhost|\[::1\])(?::\d+)?$/.test(headers.host ?? "");
}

function health(response) {
  const states = sites.map(({ name }) => [name, shut.get(name) ?? "open"]);
  const ok = states.every(([, state]) => state === "open");
  say(response, 200, JSON.stringify({ ok, sites: Object.fromEntries(states) }), "application/json");
}

/**
 * The framework asks itself at times, by this machine's own name, with the headers of the request it works on: this one says
 * which name that was asked by. Nobody else knows the secret, and what others send under it is taken away.
 */
const INSIDE = "x-toeline-inside";
const secret = randomBytes(24).toString("base64url");

function asked(request) {
  const [told] = valuesOf(request.rawHeaders, INSIDE);
  const [shown, name] = (told ?? "").split(" ");
  const inside = shown === secret && isLoopback(request.socket.remoteAddress);
  const rawHeaders = inside ? ["host", name ?? ""] : request.rawHeaders;
  return siteOfRequest(sites, { url: request.url, rawHeaders }, trustsProxy && !inside);
}

/** What the rest of this process believes of a request: the name it was found by, and where it came from. */
function settle({ headers, socket }, name) {
  headers.host = name;
  headers[INSIDE] = `${secret} ${name}`;
  delete headers["x-forwarded-host"];
  if (!trustsProxy) headers["x-forwarded-for"] = socket.remoteAddress ?? "unknown";
}

function answer(handle, request, response) {
  if (asksForHealth(request)) return health(response);
  const found = asked(request);
  if (found === null) return say(response, 421, "No site of this name is served here.");
  const { site, host: name } = found;
  if (shut.has(site.name))
    return say(response, 503, "This site is not open just now. Whoever runs the server sees there why.");
  settle(request, name);
  return inSite(site, () => handle(request, response));
}

for (const site of sites) await lock(site);
const open = sites.filter(({ name }) => !shut.has(name));
for (const [name, why] of shut) console.error(`  Site ${name} stays shut: ${why}`);
// What the server's own background work goes by (instrumentation.ts).
globalThis[Symbol.for("toeline.open-sites")] = open;
process.env.NODE_ENV = "production";
process.env.__NEXT_PRIVATE_ORIGIN = `http://${isLoopback(host) ? host : "127.0.0.1"}:${port}`;
const { default: next } = await import("next");
const app = next({ dev: false, dir: root, hostname: host, port });
await app.prepare();
const handle = app.getRequestHandler();
const server = createServer((request, response) => {
  Promise.resolve(answer(handle, request, response)).catch((error) => {
    console.error(error);
    if (!response.headersSent) say(response, 500, "Something went wrong here.");
    else response.destroy();
  });
});
server.keepAliveTimeout = Number(process.env.TOELINE_KEEP_ALIVE_MS) || 5000;
server.listen(port, host);
const stop = () => {
  server.close(() => process.exit(0));
  server.closeIdleConnections();
};
process.on("SIGTERM", stop);
process.on("SIGINT", stop);
