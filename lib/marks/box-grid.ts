import { overlaps, type Box } from "./tag-box";

/** Screen units: about the height of two numbers and half the width of a few words. */
const CELL = 48;

/** Boxes sorted into squares, so that whether a place is taken does not depend on how many there are. */
export interface BoxGrid {
  readonly add: (box: Box) => void;
  readonly isFree: (box: Box) => boolean;
}

export function boxGrid(boxes: readonly Box[]): BoxGrid {
  const cells = new Map<number, Box[]>();
  const add = (box: Box): void => {
    for (const key of cellsOf(box)) {
      const cell = cells.get(key);
      if (cell) cell.push(box);
      else cells.set(key, [box]);
    }
  };
  boxes.forEach(add);
  return {
    add,
    isFree: (box) => !cellsOf(box).some((key) => cells.get(key)?.some((other) => overlaps(box, other))),
  };
}

/** One number per square that the box touches; rows are farther apart than any drawing is wide. */
function cellsOf({ left, top, right, bottom }: Box): readonly number[] {
  const keys: number[] = [];
  for (let row = Math.floor(top / CELL); row <= Math.floor(bottom / CELL); row++) {
    for (let column = Math.floor(left / CELL); column <= Math.floor(right / CELL); column++) {
      keys.push(row * 1_000_003 + column);
    }
  }
  return keys;
}
