import type { z } from "zod";
import { routeFor, type Here } from "./here";

export type DoorResult =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly lines: readonly string[] };

/**
 * A door for machines over HTTP: GET gives the JSON Schema of a case, POST takes one case and gives one answer.
 * The same schema and the same room stand behind the command line (lib/cli).
 */
export function machineDoor<S extends z.ZodType>(
  schema: S,
  jsonSchema: () => object,
  answer: (input: z.output<S>, now: Here) => DoorResult | Promise<DoorResult>,
) {
  return {
    async GET(request: Request): Promise<Response> {
      const now = await routeFor(request, "bead.read");
      return now instanceof Response ? now : Response.json(jsonSchema());
    },
    async POST(request: Request): Promise<Response> {
      const now = await routeFor(request, "bead.read");
      if (now instanceof Response) return now;
      const json: unknown = await request.json().catch(() => undefined);
      if (json === undefined) return Response.json({ errors: ["(top): not JSON"] }, { status: 400 });
      const parsed = schema.safeParse(json);
      if (!parsed.success) {
        const errors = parsed.error.issues.map((one) => `${one.path.join(".") || "(top)"}: ${one.message}`);
        return Response.json({ errors }, { status: 422 });
      }
      const result = await answer(parsed.data, now);
      return result.ok
        ? Response.json(result.value)
        : Response.json({ errors: result.lines }, { status: 422 });
    },
  };
}
