import { z } from "zod";

/** How many entries, and before which one. */
export const LogPageSchema = z.object({
  limit: z.coerce.number().int().min(1).max(500).default(100),
  before: z.coerce.number().int().min(1).optional(),
});
