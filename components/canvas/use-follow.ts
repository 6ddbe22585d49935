"use client";

import { useState } from "react";
import type { Stretch } from "./followed";
import { followsEdge, setFollowsEdge } from "./follows-edge";

/** Whether lines run along the edge, and what was found last. */
export interface Follow {
  readonly on: boolean;
  /** Switches it; true: it is on now. What is placed stays as it is. */
  readonly toggle: () => boolean;
  readonly shown: Stretch | null;
  readonly show: (found: Stretch) => void;
}

export function useFollow(): Follow {
  // Nothing is drawn before the canvas is there, and that is in the browser alone.
  const [on, setOn] = useState(followsEdge);
  const [shown, show] = useState<Stretch | null>(null);
  return {
    on,
    toggle: () => {
      setOn(!on);
      setFollowsEdge(!on);
      return !on;
    },
    shown: on ? shown : null,
    show,
  };
}
