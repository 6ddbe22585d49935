"use client";

import { useState } from "react";
import type { Result } from "@/lib/base";
import { parseOrUnknown, unitsSentence, type UnitsIssue } from "@/lib/units";

interface Typed {
  readonly text: string;
  readonly error: string | null;
  readonly type: (text: string) => void;
  /** Called when the field is left: only then is a half-typed number called wrong. */
  readonly leave: () => void;
}

/**
 * Text that stands for a number. What was typed stays as typed, also when it cannot be read: then the stored value is
 * "not known" (never the last number that could be read), and the error says why. When the stored value changes from
 * outside, or the person's unit does, the text follows.
 */
export function useTyped(options: {
  readonly value: number | null;
  /** Names the unit a bare number is read in. */
  readonly unit: string;
  readonly write: (value: number | null) => string;
  readonly parse: (text: string) => Result<number, UnitsIssue>;
  readonly store: (value: number | null) => void;
}): Typed {
  const { value, unit, write, parse, store } = options;
  const [text, setText] = useState(() => write(value));
  const [left, setLeft] = useState(true);
  const [seen, setSeen] = useState({ value, unit });
  const read = parseOrUnknown(text, parse);

  if (seen.value !== value || seen.unit !== unit) {
    setSeen({ value, unit });
    // A text that could not be read stays for its owner to mend; a stored value replaces it.
    if (value !== null || read.ok) setText(write(value));
  }

  return {
    text,
    error: read.ok || !left ? null : read.issues.map(unitsSentence).join(" "),
    type: (next) => {
      const answer = parseOrUnknown(next, parse);
      const stored = answer.ok ? answer.value : null;
      setText(next);
      setLeft(false);
      setSeen({ value: stored, unit });
      store(stored);
    },
    leave: () => setLeft(true),
  };
}
