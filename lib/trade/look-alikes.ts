import type { Source } from "@/lib/base";
import type { ImperfectionId } from "./imperfections";
import { lookAlikes } from "./tables/look-alikes";

/** One look-alike, told from the side of the imperfection somebody holds in view. */
export interface TellApart {
  readonly other: ImperfectionId;
  readonly test: string;
  /** What is seen if it is the one asked about, and if it is the other. */
  readonly ifThis: string;
  readonly ifOther: string;
  readonly source: Source;
}

/** What an imperfection is taken for, the likeliest mistake first. */
export function tellApart(id: ImperfectionId): readonly TellApart[] {
  return lookAlikes.flatMap(({ pair: [first, second], test, seen: [ifFirst, ifSecond], source }) => {
    if (first === id) return [{ other: second, test, ifThis: ifFirst, ifOther: ifSecond, source }];
    return second === id ? [{ other: first, test, ifThis: ifSecond, ifOther: ifFirst, source }] : [];
  });
}
