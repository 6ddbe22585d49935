"use client";

import { SunMedium } from "lucide-react";
import { useState } from "react";
import { isAsTaken } from "@/components/canvas-kit";
import { useLater } from "@/components/ui";
import type { LookProps } from "./look-panel";
import { overPhoto } from "./over-photo-code";
import styles from "./view-bar.module.css";

const words = "Light and contrast of the view";

/** Opens the sliders that bring the photo to the eye; they come once somebody wants them. */
export function LookButton(props: LookProps) {
  const [isWanted, setWanted] = useState(false);
  const here = useLater(overPhoto);
  const want = () => {
    setWanted(true);
    void overPhoto.load().catch(() => undefined);
  };
  const isOn = !isAsTaken(props.look);
  const icon = <SunMedium aria-hidden="true" />;
  if (here === null || !isWanted)
    return (
      <button
        type="button"
        className={styles.light}
        aria-label={words}
        title={words}
        aria-haspopup="dialog"
        aria-expanded={false}
        data-on={isOn}
        onClick={want}
      >
        {icon}
      </button>
    );
  return (
    <here.LookPanel
      {...props}
      button={
        <button type="button" className={styles.light} aria-label={words} title={words} data-on={isOn}>
          {icon}
        </button>
      }
    />
  );
}
