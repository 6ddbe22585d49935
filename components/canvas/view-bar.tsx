"use client";

import { Expand, Keyboard, Shrink, Tag } from "lucide-react";
import type { EyeLook } from "@/components/canvas-kit";
import { asTaken } from "@/components/canvas-kit";
import { LookButton } from "./look-button";
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
      <LookButton look={look} onLook={(next) => onView({ look: next })} />
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
