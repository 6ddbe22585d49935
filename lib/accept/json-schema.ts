import { z } from "zod";
import { JudgeInputSchema } from "./types";

/** The judge's input as JSON Schema (draft 2020-12), for machines: what may be left out is not required. */
export function judgeInputJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(JudgeInputSchema, { io: "input" }) as Record<string, unknown>;
}
