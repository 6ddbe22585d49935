import type { ReactNode } from "react";
import { MarkOverlay } from "@/components/canvas";
import { itemName, layerPrimitives, type LayerItem } from "@/lib/course";
import { fitLabels, scene, type Drawing, type Primitive } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import { layerInk } from "./layer-ink";
import styles from "./layered-photo.module.css";

export interface LayeredPhotoProps {
  readonly src: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly drawing: Drawing;
  readonly items: readonly LayerItem[];
  readonly name: string;
}

/** Screen units across: lines and words come out readable on a phone and on paper. */
const ACROSS = 620;

/** A student's photo with their own marks and the instructor's layer above; works on the server and on paper. */
export function LayeredPhoto({ src, widthPx, heightPx, drawing, items, name }: LayeredPhotoProps) {
  const labels = (mark: Drawing["marks"][number]) => imperfections[mark.imperfection].name;
  const marks = fitLabels(scene(drawing, { labels, widthPx }), widthPx / ACROSS, null, { widthPx, heightPx });
  const said = items.map(itemName).join("; ");
  return (
    <figure className={styles.figure}>
      <div
        className={styles.frame}
        style={{ aspectRatio: `${widthPx} / ${heightPx}`, ["--ratio" as string]: widthPx / heightPx }}
      >
        <img src={src} alt={name} />
        <MarkOverlay scene={marks} widthPx={widthPx} heightPx={heightPx} acrossUnits={ACROSS} />
        <svg
          viewBox={`0 0 ${widthPx} ${heightPx}`}
          className={styles.layer}
          role="img"
          aria-label={said === "" ? "Nothing drawn by the instructor" : `Drawn by the instructor: ${said}`}
        >
          {layerPrimitives(items, layerInk, widthPx / ACROSS).map(toSvg)}
        </svg>
      </div>
      <figcaption>{name}</figcaption>
    </figure>
  );
}

function toSvg(one: Primitive, key: number): ReactNode {
  switch (one.kind) {
    case "path":
      return (
        <path
          key={key}
          d={
            one.points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x} ${y}`).join("") +
            (one.closed ? "Z" : "")
          }
          fill="none"
          stroke={one.stroke}
          strokeWidth={one.width}
          strokeLinecap="round"
          strokeLinejoin="round"
        />
      );
    case "circle":
      return (
        <circle
          key={key}
          cx={one.at.x}
          cy={one.at.y}
          r={one.radius}
          fill="none"
          stroke={one.stroke}
          strokeWidth={one.width}
        />
      );
    case "plate":
      return (
        <rect
          key={key}
          x={one.at.x - one.width / 2}
          y={one.at.y - one.height / 2}
          width={one.width}
          height={one.height}
          rx={one.corner}
          fill={one.fill}
          stroke={one.stroke}
          strokeWidth={one.strokeWidth}
        />
      );
    case "text":
      return (
        <text
          key={key}
          x={one.at.x}
          y={one.at.y}
          fontSize={one.size}
          fontWeight={600}
          textAnchor={one.anchor}
          dominantBaseline="central"
          fill={one.fill}
        >
          {one.text}
        </text>
      );
  }
}
