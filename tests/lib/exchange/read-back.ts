import Papa from "papaparse";
import type { MarkShapeData } from "@/lib/marks";

/** Readers for what is written here and nowhere read: small, strict, and made for round trips alone. */

/** The text as it was before a guard was put before what a spreadsheet would take for a formula. */
export function unguardText(guarded: string): string {
  return guarded.replace(/(?<=^|[;,\t\r\n])'/g, "");
}

/** The cells of a CSV as text, guards taken off, header row first. */
export function readCsv(text: string): readonly (readonly string[])[] {
  const plain = text.replace(/^\uFEFF/, "").replace(/\r\n$/, "");
  const { data, errors } = Papa.parse<string[]>(plain, { delimiter: ",", newline: "\r\n" });
  if (errors.length > 0) throw new Error(errors[0]!.message);
  return data.map((row) => row.map(unguardText));
}

/** The shape in an SvgSelector, whose frame must be that of the photo. */
export function readSvg(svg: string, widthPx: number, heightPx: number): MarkShapeData {
  const frame = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthPx} ${heightPx}">`;
  if (!svg.startsWith(frame) || !svg.endsWith("</svg>")) throw new Error(`no frame of the photo: ${svg}`);
  const element = svg.slice(frame.length, -"</svg>".length);
  const spot = /^<path d="M([^,"]+),([^h"]+)h0"\/>$/.exec(element);
  if (spot) return { kind: "point", at: { x: Number(spot[1]), y: Number(spot[2]) }, radius: null };
  const circle = /^<circle cx="([^"]+)" cy="([^"]+)" r="([^"]+)"\/>$/.exec(element);
  if (circle) {
    const [x, y, radius] = circle.slice(1).map(Number);
    return { kind: "point", at: { x: x!, y: y! }, radius: radius! };
  }
  const path = /^<(polyline|polygon) points="([^"]+)"\/>$/.exec(element);
  if (!path) throw new Error(`no shape of ours: ${element}`);
  const points = path[2]!.split(" ").map((pair) => {
    const [x, y] = pair.split(",").map(Number);
    return { x: x!, y: y! };
  });
  return { kind: path[1] === "polyline" ? "line" : "outline", points };
}
