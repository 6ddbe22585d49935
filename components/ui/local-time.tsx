"use client";

import { useSyncExternalStore } from "react";
import { localDayText, whenText, zoneText } from "./when-text";

const never = () => () => undefined;
const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC";
const onServer = (): string => "UTC";

/** The zone whose clock the reader goes by; UTC until the browser has said which. */
export const useOwnZone = (): string => useSyncExternalStore(never, ownZone, onServer);

/**
 * An instant by the clock of whoever reads it. Until the browser has said which clock that is, and where it never does, it is
 * UTC and says so. `zone`: with the name of the place, where somebody has to keep a time.
 */
export function LocalTime({ iso, only, zone = false }: { iso: string; only?: "day"; zone?: boolean }) {
  const timeZone = useOwnZone();
  const words = only === "day" ? localDayText(iso, timeZone) : whenText(iso, timeZone);
  const says = zone || (timeZone === "UTC" && only !== "day");
  return (
    <time dateTime={iso} data-zone={timeZone}>
      {words}
      {says && ` (${zoneText(timeZone)})`}
    </time>
  );
}
