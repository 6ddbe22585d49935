import { localDayText } from "@/components/ui";

/** Where the clocks of the shop hang: the time zone of the machine that serves, which the variable `TZ` sets. */
const shopZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC";

/** "25 November 2026": the day an instant falls on in the shop, for papers, which have no reader's clock to go by. */
export function shopDay(iso: string): string {
  return localDayText(iso, shopZone());
}
