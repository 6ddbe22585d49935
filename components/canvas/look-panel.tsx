"use client";

import { Popover } from "radix-ui";
import type { ReactNode } from "react";
import { asTaken, eyeLookLimits, isAsTaken, type EyeLook } from "@/components/canvas-kit";
import styles from "./view-bar.module.css";

export interface LookProps {
  readonly look: EyeLook;
  readonly onLook: (look: EyeLook) => void;
}

/** Open from the start: it comes with the press that asks for it. `button` opens and closes it from then on. */
export function LookPanel({ button, ...props }: LookProps & { readonly button: ReactNode }) {
  return (
    <Popover.Root defaultOpen>
      <Popover.Trigger asChild>{button}</Popover.Trigger>
      <Popover.Portal>
        <Popover.Content className={styles.panel} align="start" sideOffset={6}>
          <LookSliders {...props} />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}

const sliders = [
  ["brightness", "Brightness"],
  ["contrast", "Contrast"],
  ["detail", "Local contrast"],
] as const;

function LookSliders({ look, onLook }: LookProps) {
  return (
    <>
      {sliders.map(([key, name]) => (
        <label key={key} className={styles.slider}>
          {name}
          <input
            type="range"
            min={eyeLookLimits[key][0]}
            max={eyeLookLimits[key][1]}
            step={0.05}
            value={look[key]}
            onChange={({ target }) => onLook({ ...look, [key]: Number(target.value) })}
          />
        </label>
      ))}
      <p className={styles.note}>For the eye only. Sizes, sheet and print go by the photo as it was taken.</p>
      <button
        type="button"
        className={styles.reset}
        disabled={isAsTaken(look)}
        onClick={() => onLook(asTaken)}
      >
        As taken
      </button>
    </>
  );
}
