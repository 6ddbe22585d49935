"use client";
import dynamic from "next/dynamic";
import styles from "./bead-canvas.module.css";
import type { BeadCanvasProps } from "./types";

/** Konva draws in the browser only; until it has arrived the place is kept free. */
const Loaded = dynamic(() => import("./bead-canvas"), {
  ssr: false,
  loading: () => <div className={styles.waiting}>Loading the photo …</div>,
});

/** Another photo is another canvas: view and draft start afresh. */
export function BeadCanvas(props: BeadCanvasProps) {
  return <Loaded key={props.photo.viewUrl} {...props} />;
}
