"use client";

import { useState } from "react";
import type { Said } from "@/components/ui";
import { ok, type Answer } from "@/lib/base";
import type { Save, Saved, SaveState, Stored } from "./saver";
import { useRevision } from "./use-revision";
import { useWarnWhenLeaving } from "./use-warn-when-leaving";

/** The revision to go on from, and what to tell. */
export type SavedAndSaid = Saved & Said;

export interface Editing<C> {
  readonly start: C;
  readonly revision: number;
  readonly save: Save<C, SavedAndSaid>;
  /** What the store holds now; asked only after a collision. null: nothing is there yet that could collide. */
  readonly readStored: (() => Promise<Answer<Stored<C>>>) | null;
}

/**
 * Content that is edited and saved as a whole, at a press or shortly after each change; what another window saved
 * meanwhile is never lost, and nobody leaves what is not saved without being asked.
 */
export function useEdited<C>(
  { start, revision, save, readStored }: Editing<C>,
  when: "asked" | "auto" = "asked",
) {
  const { content, isEdited, setEdited, replace, change } = useContent(start);
  const [setAside, setSetAside] = useState<C | null>(null);
  const { state, send, flush, takeStored, keepOwn } = useRevision(when, revision, content, save);
  const isWaiting = when === "asked" ? isEdited : state.kind !== "saved";
  useWarnWhenLeaving(isWaiting);
  const keepMine = (stored: Stored<C>) => {
    setEdited(false);
    keepOwn(stored);
  };
  const takeOther = (stored: Stored<C>) => {
    setSetAside(content);
    replace(stored.content);
    takeStored(stored);
  };
  const bringBack = (mine: C) => {
    replace(mine);
    setSetAside(null);
  };
  const submit = () => {
    setEdited(false);
    setSetAside(null);
    void (when === "auto" ? flush() : send());
  };
  return {
    ...{ content, state, readStored, change, submit },
    said: isEdited && when === "asked" ? null : saidOf(state),
    pending: state.kind === "saving",
    choices: [
      { label: "Keep mine", choose: keepMine },
      { label: "Take the other one; mine stays at hand", choose: takeOther },
    ],
    bringBack: setAside === null ? null : () => bringBack(setAside),
  };
}

/** What stands on the screen, and whether it was touched since it was last saved or shown. */
function useContent<C>(start: C) {
  const [content, setContent] = useState(start);
  const [isEdited, setEdited] = useState(false);
  const edit = (next: (before: C) => C) => {
    setContent(next);
    setEdited(true);
  };
  return {
    content,
    isEdited,
    setEdited,
    replace: (next: C) => edit(() => next),
    change: (part: Partial<C>) => edit((before) => ({ ...before, ...part })),
  };
}

function saidOf(state: SaveState<SavedAndSaid>): Answer<Said> | null {
  if (state.kind === "refused") return state.refusal;
  return state.kind === "saved" && state.value ? ok(state.value) : null;
}
