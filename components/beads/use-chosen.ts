"use client";

import { useSyncExternalStore } from "react";
import { readChosen, type Chosen } from "./chosen";

const KEY = "toeline-chosen";
const CHANGED = "toeline-chosen";
const none: Chosen = [];

let last: { readonly text: string | null; readonly chosen: Chosen } = { text: null, chosen: none };

/** As text in this window's storage, so that it outlives a page of the list and ends with the window. */
function kept(): Chosen {
  const text = storedText();
  if (text !== last.text) last = { text, chosen: readChosen(text) };
  return last.chosen;
}

function storedText(): string | null {
  try {
    return sessionStorage.getItem(KEY);
  } catch {
    return last.text;
  }
}

function keep(chosen: Chosen): void {
  const text = JSON.stringify(chosen);
  try {
    sessionStorage.setItem(KEY, text);
  } catch {
    last = { text, chosen };
  }
  dispatchEvent(new Event(CHANGED));
}

function hear(told: () => void): () => void {
  addEventListener(CHANGED, told);
  return () => removeEventListener(CHANGED, told);
}

/** What is chosen in the list, and how to choose otherwise; one choice for all pages of the list in this window. */
export function useChosen(): readonly [Chosen, (change: (before: Chosen) => Chosen) => void] {
  const chosen = useSyncExternalStore(hear, kept, () => none);
  return [chosen, (change) => keep(change(kept()))];
}
