import { comesInNumbers } from "@/lib/trade";
import type { Mark } from "./drawing";

/** About how many somebody took the patch to hold, by eye; null where nobody said, or the kind does not come in numbers. */
export function countAbout({ imperfection, aboutCount }: Pick<Mark, "imperfection" | "aboutCount">) {
  return aboutCount !== undefined && comesInNumbers(imperfection) ? aboutCount : null;
}
