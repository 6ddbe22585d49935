import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A PDF read back by a library that did not write it. Coordinates are points, y upwards from the page's bottom. */
export interface ReadPage {
  readonly text: string;
  readonly items: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    /** Of its type, points. */
    readonly size: number;
  }[];
  /** Every point that a path goes through, in points, with the page's transforms applied. */
  readonly pathPoints: readonly { readonly x: number; readonly y: number }[];
  readonly images: number;
  /** Where each picture lies: its lower left corner and its size, points. */
  readonly imageBoxes: readonly Box[];
  /** Types of the elements a screen reader walks, in their order. */
  readonly tags: readonly string[];
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
];

interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

function pathPoints({ fnArray, argsArray }: Operators): { x: number; y: number }[] {
  const points: { x: number; y: number }[] = [];
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  fnArray.forEach((fn, i) => {
    if (fn === OPS.save) stack.push(matrix);
    else if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, argsArray[i] as Matrix);
    else if (fn === OPS.constructPath) points.push(...pointsOf(argsArray[i] as [number[], number[]], matrix));
  });
  return points;
}

function imageBoxes({ fnArray, argsArray }: Operators): Box[] {
  const boxes: Box[] = [];
  const stack: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  fnArray.forEach((fn, i) => {
    if (fn === OPS.save) stack.push(matrix);
    else if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
    else if (fn === OPS.transform) matrix = times(matrix, argsArray[i] as Matrix);
    else if (fn === OPS.paintImageXObject) {
      // A picture is the unit square under the matrix; ours are upright, some drawn from the top downwards.
      const [width, , , height, x, y] = matrix;
      boxes.push({ x, y: Math.min(y, y + height), width, height: Math.abs(height) });
    }
  });
  return boxes;
}

/** Ends of straight pieces only: move and line take two numbers, a curve six, a rectangle four. */
function pointsOf([ops, numbers]: [number[], number[]], m: Matrix): { x: number; y: number }[] {
  const sizes: Record<number, number> = { [OPS.curveTo]: 6, [OPS.rectangle]: 4, [OPS.closePath]: 0 };
  const points: { x: number; y: number }[] = [];
  let at = 0;
  for (const op of ops) {
    const [x = 0, y = 0] = numbers.slice(at);
    if (op === OPS.moveTo || op === OPS.lineTo)
      points.push({ x: m[0] * x + m[2] * y + m[4], y: m[1] * x + m[3] * y + m[5] });
    at += sizes[op] ?? 2;
  }
  return points;
}

interface StructNode {
  readonly role?: string;
  readonly children?: readonly StructNode[];
}

const roles = (node: StructNode | null): string[] =>
  node === null ? [] : [...(node.role ? [node.role] : []), ...(node.children ?? []).flatMap(roles)];

/** Text with every run of white space as one space: where lines broke is the layout's business. */
export const plain = (text: string): string => text.replace(/\s+/g, " ").trim();

export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const pdf = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent();
    const found = items.flatMap((item) => ("str" in item ? [item] : []));
    const operators = await page.getOperatorList();
    pages.push({
      text: plain(found.map((item) => item.str + (item.hasEOL ? " " : "")).join("")),
      items: found.map(({ str, transform, width }) => ({
        text: str,
        x: Number(transform[4]),
        y: Number(transform[5]),
        width,
        size: Math.hypot(Number(transform[2]), Number(transform[3])),
      })),
      pathPoints: pathPoints(operators),
      imageBoxes: imageBoxes(operators),
      images: operators.fnArray.filter((fn) => fn === OPS.paintImageXObject).length,
      tags: roles((await page.getStructTree()) as StructNode | null),
    });
  }
  await task.destroy();
  return pages;
}
