"use client";

import { Expand, Keyboard, Shrink, SunMedium, Tag } from "lucide-react";
import { Popover } from "radix-ui";
import type { EyeLook } from "@/components/canvas-kit";
import { asTaken, eyeLookLimits, isAsTaken } from "@/components/canvas-kit";
import { nextTagLevel, tagLevelWords, type TagLevel } from "./tag-level";
import styles from "./view-bar.module.css";

/** How the photo is shown, never what is on it. */
export interface ViewChoice {
  readonly tags: TagLevel;
  readonly look: EyeLook;
  /** Over the whole window. */
  readonly full: boolean;
}

export const plainView: ViewChoice = { tags: "words", look: asTaken, full: false };

export function ViewBar({
  view,
  hasMarks,
  onView,
  onKeys,
}: {
  view: ViewChoice;
  hasMarks: boolean;
  onView: (change: Partial<ViewChoice>) => void;
  onKeys: () => void;
}) {
  const { tags, look, full } = view;
  const said = full ? "Leave the full screen" : "Photo over the whole screen";
  return (
    <div className={styles.bar} role="group" aria-label="How the photo is shown">
      <button type="button" aria-label={said} title={said} onClick={() => onView({ full: !full })}>
        {full ? <Shrink aria-hidden="true" /> : <Expand aria-hidden="true" />}
      </button>
      <Popover.Root>
        <Popover.Trigger
          className={styles.light}
          aria-label="Light and contrast of the view"
          title="Light and contrast of the view"
          data-on={!isAsTaken(look)}
        >
          <SunMedium aria-hidden="true" />
        </Popover.Trigger>
        <Popover.Portal>
          <Popover.Content className={styles.panel} align="start" sideOffset={6}>
            <LookSliders look={look} onLook={(next) => onView({ look: next })} />
          </Popover.Content>
        </Popover.Portal>
      </Popover.Root>
      {hasMarks && (
        <button type="button" className={styles.tags} onClick={() => onView({ tags: nextTagLevel(tags) })}>
          <Tag aria-hidden="true" /> {tagLevelWords[tags]}
        </button>
      )}
      <button type="button" className={styles.keys} aria-label="Keys" title="Keys (?)" onClick={onKeys}>
        <Keyboard aria-hidden="true" />
      </button>
    </div>
  );
}

const sliders = [
  ["brightness", "Brightness"],
  ["contrast", "Contrast"],
  ["detail", "Local contrast"],
] as const;

function LookSliders({ look, onLook }: { look: EyeLook; onLook: (look: EyeLook) => void }) {
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
