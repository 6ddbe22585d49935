"use client";

import { useEffect, useLayoutEffect, useRef } from "react";
import { stageBoard, type Shown, type StageBoard } from "./stage-board";

/** The board on the page: what React knows is shown on it, and what a hand moves goes past React. */
export default function CanvasStage(shown: Shown) {
  const place = useRef<HTMLDivElement>(null);
  const board = useRef<StageBoard>(null);
  useLayoutEffect(() => {
    if (place.current === null) return undefined;
    const made = stageBoard(place.current);
    board.current = made;
    return () => made.destroy();
  }, []);
  useLayoutEffect(() => board.current?.show(shown));
  const { live } = shown.control;
  useEffect(() => live.follow((view) => board.current?.move(view)), [live]);
  return <div ref={place} />;
}
