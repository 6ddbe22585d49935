import type { Process } from "@/lib/trade";

/** Processes that rows of the cause tables speak of together. */
export const ALL: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW", "SMAW", "GTAW"];
/** Wire comes through a gun. */
export const WIRE: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW"];
export const CORED: readonly Process[] = ["FCAW-S", "FCAW-G"];
/** Gas comes out of a nozzle. */
export const GAS: readonly Process[] = ["FCAW-G", "GMAW", "GTAW"];
export const GAS_WIRE: readonly Process[] = ["FCAW-G", "GMAW"];
/** No gas is piped to the arc. */
export const GASLESS: readonly Process[] = ["FCAW-S", "SMAW"];
export const NOT_GASLESS_WIRE: readonly Process[] = ["FCAW-G", "GMAW", "SMAW", "GTAW"];
export const SLAG: readonly Process[] = ["FCAW-S", "FCAW-G", "SMAW"];
/** Held in a hand without a feed: a covered electrode or a tungsten. */
export const ROD: readonly Process[] = ["SMAW", "GTAW"];
export const STICK: readonly Process[] = ["SMAW"];
export const NOT_TUNGSTEN: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW", "SMAW"];
