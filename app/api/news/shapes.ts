import { z } from "zod";

/** Since when: the `until` of the answer before. */
export const NewsAskedSchema = z.object({ since: z.iso.datetime().optional() });
