import { MOST_JSON_BYTES, MOST_JSON_MB } from "@/lib/base";
import { readBody } from "./read-body";

/**
 * The JSON of a request; null where it is none. A body that is too large is answered at once, before it is read whole:
 * that answer comes instead.
 */
export async function readJson(request: Request): Promise<{ readonly json: unknown } | Response> {
  const bytes = await readBody(request, MOST_JSON_BYTES);
  if (bytes === null) {
    const message = `This is larger than ${MOST_JSON_MB} MB, which no bead is. Nothing was changed.`;
    return Response.json({ issues: [{ code: "too-large", path: [], message }] }, { status: 413 });
  }
  try {
    return { json: JSON.parse(new TextDecoder().decode(bytes)) as unknown };
  } catch {
    return { json: null };
  }
}
