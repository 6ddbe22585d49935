"use client";

import { useState } from "react";
import { Expand, Keyboard, Shrink, SunMedium, Tag } from "lucide-react";
import { asTaken, isAsTaken, type EyeLook } from "@/components/canvas-kit";
import { useLater } from "@/components/ui";
import { canvasCode } from "./canvas-code";
import { nextTagLevel, tagLevelWords, type TagLevel } from "./tag-level";
import type { LookProps } from "./look-panel";
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

/** Its panel comes with the later code; a press before that has it brought. */
function LookButton({ look, onLook }: LookProps) {
  const [wanted, want] = useState(false);
  const late = useLater(canvasCode);
  const button = {
    className: styles.light,
    "aria-label": "Light and contrast of the view",
    title: "Light and contrast of the view",
    "data-on": !isAsTaken(look),
    children: <SunMedium aria-hidden="true" />,
  };
  if (late) return <late.LookPanel {...{ look, onLook, button }} openAtOnce={wanted} />;
  return <button type="button" aria-haspopup="dialog" {...button} onClick={() => want(true)} />;
}
