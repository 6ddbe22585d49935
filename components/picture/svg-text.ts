import { sceneToSvg, type SceneShape, type SvgNode } from "@/lib/marks";
import { palette } from "./palette";

/** The marks of a photo as the text of an SVG file of this size, for a picture that leaves the page. */
export function svgText(
  scene: readonly SceneShape[],
  photo: { readonly widthPx: number; readonly heightPx: number },
  acrossUnits: number,
  size: { readonly width: number; readonly height: number },
): string {
  const tree = sceneToSvg(scene, photo.widthPx, photo.heightPx, { palette, acrossUnits });
  const attributes = {
    ...tree.attributes,
    xmlns: "http://www.w3.org/2000/svg",
    width: size.width,
    height: size.height,
    "font-family": "Barlow, sans-serif",
  };
  return textOf({ ...tree, attributes });
}

function textOf(node: SvgNode | string): string {
  if (typeof node === "string") return escaped(node);
  const attributes = Object.entries(node.attributes).map(
    ([name, value]) => ` ${name}="${escaped(String(value))}"`,
  );
  return `<${node.tag}${attributes.join("")}>${node.children.map(textOf).join("")}</${node.tag}>`;
}

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
