import { fail, issue, ok, type Result } from "@/lib/base";
import type { ExchangeIssue } from "./issue";
import { svgTags, type Tag } from "./svg-tags";

/** The one shape element of an SVG area, and the root whose view box it is drawn in. */
export interface SvgArea {
  readonly root: Tag;
  readonly shape: Tag;
}

/** The elements the recommendation names for an area, and `line`, its nearest relative. */
const shapeNames = new Set(["path", "rect", "circle", "ellipse", "polyline", "polygon", "line"]);
const MOST_DEPTH = 8;

const refuse = (what: string) => fail(issue("svg-refused" as const, [], { what }));
const unreadable = (problem: string) => fail(issue("svg-unreadable" as const, [], { problem }));

/**
 * Finds the single shape in an SVG text. Style is ignored, as the recommendation asks; anything that acts, points
 * elsewhere or shows something else refuses the whole. Issues: `svg-too-large`, `svg-refused`, `svg-unreadable`,
 * `svg-shape`.
 */
export function svgArea(text: string): Result<SvgArea, ExchangeIssue> {
  const read = svgTags(text);
  if (!read.ok) return read;
  const [root] = read.value;
  if (root?.name !== "svg") return unreadable("no svg element at its root");
  const harmful = read.value.map(harm).find((what) => what !== null);
  if (harmful) return refuse(harmful);
  const nesting = nestingProblem(read.value);
  if (nesting) return unreadable(nesting);
  const turned = read.value.some(({ attributes }) => attributes.has("transform"));
  if (turned) return fail(issue("svg-shape", [], { what: "a transform" }));
  const [shape, ...more] = read.value.filter(({ name, kind }) => shapeNames.has(name) && kind !== "close");
  if (!shape || more.length > 0)
    return fail(issue("svg-shape", [], { what: shape ? `${more.length + 1} shapes` : "no shape at all" }));
  return ok({ root, shape });
}

/** What makes a tag more than an area, in words; null when nothing does. */
function harm({ name, attributes }: Tag): string | null {
  if (name !== "svg" && name !== "g" && !shapeNames.has(name)) return `a "${name.slice(0, 40)}" element`;
  for (const key of attributes.keys()) {
    if (/^on/i.test(key)) return `an event handler (${key.slice(0, 40)})`;
    if (/(^|:)(href|src)$/i.test(key)) return "a link";
  }
  return null;
}

function nestingProblem(tags: readonly Tag[]): string | null {
  const open: string[] = [];
  for (const [i, { name, kind }] of tags.entries()) {
    if (i > 0 && open.length === 0) return "more than one root";
    if (i > 0 && name === "svg" && kind !== "close") return "an svg within an svg";
    if (kind === "open") open.push(name);
    if (kind === "close" && open.pop() !== name) return `"${name.slice(0, 40)}" closed but not open`;
    if (open.length > MOST_DEPTH) return "nested too deep";
  }
  return open.length > 0 ? `"${open[0] ?? ""}" not closed` : null;
}
