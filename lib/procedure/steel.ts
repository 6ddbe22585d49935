import { z } from "zod";

const percent = () => z.number().min(0).max(20).default(0);

/** Composition of a steel by its certificate, percent by mass; what is left out is none. */
export const SteelSchema = z.object({
  carbonPercent: z.number().min(0).max(2),
  siliconPercent: percent(),
  manganesePercent: percent(),
  chromiumPercent: percent(),
  molybdenumPercent: percent(),
  vanadiumPercent: percent(),
  nickelPercent: percent(),
  copperPercent: percent(),
  boronPercent: percent(),
  /** Diffusible hydrogen of the consumable, ml in 100 g of weld metal: 5 for H5. */
  hydrogenMlPer100G: z.number().min(1).max(40).default(10),
});
export type Steel = z.infer<typeof SteelSchema>;
