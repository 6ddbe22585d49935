"use client";

import { useState } from "react";

/** What a live region says. The same words twice in a row are told apart by a space, or they would be read once. */
export function useSaid(): readonly [string, (text: string) => void] {
  const [said, setSaid] = useState("");
  return [said, (text) => setSaid((before) => (before === text ? `${text}\u00a0` : text))];
}
