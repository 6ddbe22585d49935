import { z } from "zod";
import { MeasureCaseSchema } from "./measure-case";

/** A measuring case as JSON Schema (draft 2020-12), for machines. */
export function measureCaseJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(MeasureCaseSchema, { io: "input" }) as Record<string, unknown>;
}
