import type { Source } from "@/lib/base";
import type { Amount, Change, UnitKind } from "../types";

/** The number of a change. Everything else about it comes from the cause's row. */
export interface Step extends Pick<
  Change,
  "quantity" | "unitKind" | "fromSi" | "toSi" | "stepSi" | "fromText" | "toText" | "effects"
> {
  readonly reason: string;
  /** Part of a usual step that the window leaves, 0 to 1: scales the chance of a cure. */
  readonly share: number;
  readonly amounts: readonly Amount[];
  readonly source: Source;
}

export const noNumber = (reason: string, source: Source): Step => ({
  quantity: null,
  unitKind: null,
  fromSi: null,
  toSi: null,
  stepSi: null,
  fromText: null,
  toText: null,
  effects: [],
  share: 1,
  reason,
  amounts: [],
  source,
});

export const number = (
  quantity: string,
  unitKind: UnitKind,
  fromSi: number | null,
  toSi: number | null,
  rest: Pick<Step, "reason" | "source"> & Partial<Step>,
): Step => ({
  ...noNumber(rest.reason, rest.source),
  quantity,
  unitKind,
  fromSi,
  toSi,
  stepSi: fromSi !== null && toSi !== null ? toSi - fromSi : null,
  ...rest,
});
