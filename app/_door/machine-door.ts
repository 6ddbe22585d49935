import {
  answerCase,
  caseJsonSchema,
  MOST_CASE_BYTES,
  readCaseText,
  tooLarge,
  type CaseContext,
  type Door,
} from "@/lib/case";
import { routeFor, type Here } from "./here";
import { readBody } from "./read-body";

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
    async GET(request: Request): Promise<Response> {
      const now = await routeFor(request, "bead.read");
      return now instanceof Response ? now : Response.json(caseJsonSchema(door));
    },
    async POST(request: Request): Promise<Response> {
      const now = await routeFor(request, "bead.read");
      if (now instanceof Response) return now;
      const bytes = await readBody(request, MOST_CASE_BYTES);
      const read = bytes === null ? tooLarge() : readCaseText(bytes);
      if (!read.ok) return Response.json({ errors: read.lines }, { status: 400 });
      const answer = answerCase(door, read.value, await contextOf(read.value, now));
      return answer.ok
        ? Response.json(answer.value)
        : Response.json({ errors: answer.lines }, { status: 422 });
    },
  };
}
