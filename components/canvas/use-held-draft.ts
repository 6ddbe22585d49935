"use client";

import { useState } from "react";
import type { Drawing } from "@/lib/marks";
import type { SectionEdgeRole } from "@/lib/section";
import type { Draft } from "./draft";
import type { ScalePickKind } from "./scale-picks";
import type { Tool } from "./types";

/** What a draft was begun with. */
export interface DraftGround {
  readonly tool: Tool;
  readonly scale: Drawing["scale"];
  readonly scaleKind: ScalePickKind;
  /** Of the edge tool: which edge is drawn. */
  readonly edge?: SectionEdgeRole | null;
}

/**
 * Whether a draft has lost its ground: another tool, another edge or scale object to pick, or, once a length is asked for,
 * another scale than then.
 */
export function isStale(draft: Draft | null, begun: DraftGround, now: DraftGround): boolean {
  return (
    begun.tool !== now.tool ||
    (now.tool === "scale" && begun.scaleKind !== now.scaleKind) ||
    (now.tool === "edge" && begun.edge !== now.edge) ||
    (draft?.kind === "unmeasured" && begun.scale !== now.scale)
  );
}

/** The draft in hand; null as soon as what it was begun with is gone. */
export function useHeldDraft(ground: DraftGround): {
  readonly draft: Draft | null;
  readonly setDraft: (draft: Draft | null) => void;
  /** Changes the one in hand at that moment, which may be a later one than the screen shows. */
  readonly changeDraft: (change: (draft: Draft | null) => Draft | null) => void;
} {
  const [held, setHeld] = useState<{ readonly draft: Draft | null; readonly begun: DraftGround }>({
    draft: null,
    begun: ground,
  });
  const draft = isStale(held.draft, held.begun, ground) ? null : held.draft;
  return {
    draft,
    setDraft: (next) => setHeld({ draft: next, begun: ground }),
    changeDraft: (change) => setHeld((old) => ({ ...old, draft: change(old.draft) })),
  };
}
