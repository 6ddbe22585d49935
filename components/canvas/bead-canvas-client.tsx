"use client";

import dynamic from "next/dynamic";
import { EaselWaiting } from "@/components/canvas-kit";
import type { BeadCanvasProps } from "./types";

/** A canvas lives in the browser only; until it has arrived the place is kept free. */
const Loaded = dynamic(() => import("./bead-canvas"), { ssr: false, loading: EaselWaiting });

/** Another photo is another canvas: view and draft start afresh. */
export function BeadCanvas(props: BeadCanvasProps) {
  return <Loaded key={props.photo.viewUrl} {...props} />;
}
