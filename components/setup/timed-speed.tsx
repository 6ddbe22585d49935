"use client";

import { showReading, travelSpeed } from "@/lib/setup";
import { otherUnits } from "@/lib/units";
import styles from "./fields.module.css";
import { useForm } from "./form-context";

/** The travel speed that length and arc time give, when nobody read one. */
export function TimedSpeed() {
  const { setup, units } = useForm();
  const speed = travelSpeed(setup);
  if (speed === null || speed.from === "recorded") {
    return <p className={styles.hint}>No speed read? Length and arc time give it.</p>;
  }
  return (
    <p className={styles.derived}>
      Length over arc time: <strong>{showReading(units)("travelSpeedMmPerMin", speed.mmPerMin)}</strong> (
      {showReading(otherUnits(units))("travelSpeedMmPerMin", speed.mmPerMin)})
    </p>
  );
}
