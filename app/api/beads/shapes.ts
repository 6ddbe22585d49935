import { z } from "zod";
import { BeadContentSchema } from "@/lib/assess";
import { isNewId } from "@/lib/store";

export const PageSchema = z.object({
  limit: z.coerce.number().int().min(1).max(500).default(100),
  offset: z.coerce.number().int().min(0).default(0),
  /** Where the page begins: what the page before called `next`. */
  after: z.string().min(1).max(300).optional(),
});

/** An id that the sender made, in the letters of our own. */
export const OwnIdSchema = z.string().refine(isNewId, "an id has twelve of the letters ids are made of");

/** What a bead may be started with. */
export const NewBeadSchema = BeadContentSchema.pick({
  title: true,
  welder: true,
  setup: true,
  judgement: true,
})
  .extend({ id: OwnIdSchema })
  .partial();
