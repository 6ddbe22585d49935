"use client";

import { useEffect, useEffectEvent, useState } from "react";

/** A pause this long ends what was being typed. */
const PAUSE_MS = 1200;

/**
 * A text as it is being typed: one change however long it took, sent when the field is left, when the person has paused,
 * and when the field goes away. What is stored wins when undo, redo or another tab changed it.
 */
export function useTypedText(text: string, onText: (text: string) => void) {
  const [typed, setTyped] = useState(text);
  const [known, setKnown] = useState(text);
  if (known !== text) {
    setKnown(text);
    setTyped(text);
  }
  const send = () => {
    if (typed !== text) onText(typed);
  };
  const sendLater = useEffectEvent(send);
  useEffect(() => {
    const timer = window.setTimeout(() => sendLater(), PAUSE_MS);
    return () => window.clearTimeout(timer);
  }, [typed]);
  useEffect(() => () => sendLater(), []);
  return { value: typed, onChange: setTyped, onBlur: send } as const;
}
