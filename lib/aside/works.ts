import { archive } from "./archives";
import { look } from "./looks";
import { papers } from "./papers";
import { tables } from "./tables";
import type { Work } from "./words";

/** Everything that is done aside, by name. */
export const works = { ...papers, ...tables, archive, look };

export type Works = typeof works;
export type InputOf<N extends keyof Works> = Works[N] extends Work<infer I, infer _H> ? I : never;
export type HeadOf<N extends keyof Works> = Works[N] extends Work<infer _I, infer H> ? H : never;
