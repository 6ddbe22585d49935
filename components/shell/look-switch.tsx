"use client";

import { useSyncExternalStore } from "react";
import { chooseLook, lookChoice, lookChoices, onLook } from "./look";
import styles from "./switch.module.css";

const words = { auto: "As the device", light: "Light", dark: "Dark" } as const;

/** Light for glare, dark for a dim bay, or whatever the device does. Kept on this device. */
export function LookSwitch() {
  const choice = useSyncExternalStore(onLook, lookChoice, () => "auto" as const);
  return (
    <div className={`${styles.switch} ${styles.inMenu}`} role="group" aria-label="Light or dark">
      {lookChoices.map((one) => (
        <button key={one} type="button" aria-pressed={one === choice} onClick={() => chooseLook(one)}>
          {words[one]}
        </button>
      ))}
    </div>
  );
}
