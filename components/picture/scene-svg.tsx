import { createElement, type ReactNode } from "react";
import { primitivesToSvg, sceneToSvg, type Primitive, type SceneShape, type SvgNode } from "@/lib/marks";
import { palette } from "./palette";

export interface MarkOverlayProps {
  readonly scene: readonly SceneShape[];
  /** Upright original, pixels: the same as the marks'. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** How many screen units the picture is wide; smaller makes lines and numbers larger. */
  readonly acrossUnits?: number;
  readonly className?: string | undefined;
  /** Says what the picture shows; left out, the overlay is decoration beside a table that says it. */
  readonly label?: string;
}

/** React spells attributes in camel case, except those that begin with "aria-" or "data-". */
const camel = (name: string): string =>
  name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());

function toElement(node: SvgNode | string, key: number): ReactNode {
  if (typeof node === "string") return node;
  const props = Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [camel(name), value]),
  );
  return createElement(node.tag, { ...props, key }, ...node.children.map(toElement));
}

/** Primitives as elements to put into an <svg> whose view box is the photo in pixels. */
export const svgElements = (list: readonly Primitive[]): readonly ReactNode[] =>
  primitivesToSvg(list).map(toElement);

/**
 * The marks as SVG to lay over an <img> of the same photo: give both the same box, the overlay fills its own. Works
 * in server components and on paper.
 */
export function MarkOverlay({
  scene,
  widthPx,
  heightPx,
  acrossUnits = 760,
  className,
  label,
}: MarkOverlayProps) {
  const tree = sceneToSvg(scene, widthPx, heightPx, { palette, acrossUnits });
  return (
    <svg
      viewBox={String(tree.attributes.viewBox)}
      className={className}
      style={{
        position: "absolute",
        inset: 0,
        width: "100%",
        height: "100%",
        fontFamily: "var(--font-text)",
      }}
      {...(label === undefined ? { "aria-hidden": true } : { role: "img", "aria-label": label })}
    >
      {tree.children.map(toElement)}
    </svg>
  );
}

/** Part of a photo with the marks on it, as one picture. */
export function CroppedPhoto({
  href,
  scene,
  widthPx,
  heightPx,
  crop,
  acrossUnits,
  className,
  label,
}: Omit<MarkOverlayProps, "acrossUnits" | "label"> & {
  readonly href: string;
  /** In upright photo pixels. */
  readonly crop: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly acrossUnits: number;
  readonly label: string;
}) {
  const tree = sceneToSvg(scene, crop.width, crop.height, { palette, acrossUnits });
  return (
    <svg
      viewBox={`${crop.x} ${crop.y} ${crop.width} ${crop.height}`}
      className={className}
      style={{ fontFamily: "var(--font-text)", aspectRatio: `${crop.width} / ${crop.height}` }}
      role="img"
      aria-label={label}
    >
      <image href={href} width={widthPx} height={heightPx} preserveAspectRatio="none" />
      {tree.children.map(toElement)}
    </svg>
  );
}
