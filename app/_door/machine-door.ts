import {
  answerCase,
  caseJsonSchema,
  MOST_CASE_BYTES,
  readCaseText,
  tooLarge,
  type CaseContext,
  type Door,
} from "@/lib/case";
import type { Here } from "./here";
import { readBody } from "./read-body";
import { routeFor } from "./route-for";

/**
 * A door for machines over HTTP: GET gives the JSON Schema of a case, POST takes one case and gives one answer.
 * The same room stands behind the command line (lib/cli), so the lines of a refusal are the same.
 *
 * @param contextOf What the store has for this case.
 */
export function machineDoor(
  door: Door,
  contextOf: (json: unknown, now: Here) => Promise<CaseContext> = async () => ({ shop: null }),
) {
  return {
    GET: routeFor("bead.read", () => Response.json(caseJsonSchema(door))),
    POST: routeFor("bead.read", async (now, request) => {
      const bytes = await readBody(request, MOST_CASE_BYTES);
      const read = bytes === null ? tooLarge() : readCaseText(bytes);
      if (!read.ok) return Response.json({ errors: read.lines }, { status: bytes === null ? 413 : 400 });
      const answer = answerCase(door, read.value, await contextOf(read.value, now));
      return answer.ok
        ? Response.json(answer.value)
        : Response.json({ errors: answer.lines }, { status: 422 });
    }),
  };
}
