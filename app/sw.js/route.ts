import { readFile } from "node:fs/promises";
import path from "node:path";

export const dynamic = "force-dynamic";

/** The service worker, built beside the pages; a development server has none. */
export async function GET(): Promise<Response> {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), ".next", "toeline-worker.js");
  const text = await readFile(file, "utf8").catch(() => null);
  if (text === null) return new Response("No worker was built.", { status: 404 });
  return new Response(text, {
    headers: {
      "content-type": "text/javascript; charset=utf-8",
      "cache-control": "no-cache",
      "x-content-type-options": "nosniff",
    },
  });
}
