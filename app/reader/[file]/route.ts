import { readFile } from "node:fs/promises";
import path from "node:path";
import { pathRouteFor } from "@/app/_door/route-for";
import { finder, reader, spots } from "@/lib/trace";

export const dynamic = "force-dynamic";

const runtime = path.join("node_modules", "onnxruntime-web", "dist");

const weights = (file: string) => ({
  at: path.join("lib", "trace", "weights", file),
  type: "application/octet-stream",
});

/** What the bead's reader needs, from this address and no other: its weights and the runtime that runs them. */
const files: Readonly<Record<string, { readonly at: string; readonly type: string }>> = {
  [reader.file]: weights(reader.file),
  [finder.file]: weights(finder.file),
  [spots.file]: weights(spots.file),
  "ort-wasm-simd-threaded.wasm": {
    at: path.join(runtime, "ort-wasm-simd-threaded.wasm"),
    type: "application/wasm",
  },
  "ort-wasm-simd-threaded.mjs": {
    at: path.join(runtime, "ort-wasm-simd-threaded.mjs"),
    type: "text/javascript",
  },
};

/** One file of the reader's; it is asked for when a bead is first read, and kept by the browser. */
export const GET = pathRouteFor<{ file: string }>("bead.read", async (_now, _request, { file }) => {
  const known = Object.hasOwn(files, file) ? files[file] : undefined;
  if (known === undefined)
    return Response.json(
      { issues: [{ code: "not-found", message: "The reader has no such file." }] },
      { status: 404 },
    );
  return new Response(
    new Uint8Array(await readFile(path.join(/* turbopackIgnore: true */ process.cwd(), known.at))),
    {
      headers: { "content-type": known.type, "cache-control": "private, max-age=31536000" },
    },
  );
});
