import { MM_PER_INCH } from "@/lib/base";

/** A4 and what is kept free on it. All lengths of this room are PDF points (1/72 inch), y downwards from the top. */
export const PAGE = { width: 595.28, height: 841.89 } as const;
export const LEFT = 40;
export const RIGHT = PAGE.width - 40;
export const BODY_WIDTH = RIGHT - LEFT;
/** Where the body begins, under the running head of later pages, and where it must end, above the foot. */
export const BODY_TOP = 62;
export const BODY_BOTTOM = 762;
export const FOOT_TOP = 772;

/**
 * A sheet that fits one page uses more of it, as far as an ordinary printer reaches: where its body begins and ends, the foot
 * and its code, and how much of the width that code takes.
 */
export const ONE_PAGE = {
  left: 34,
  top: 28,
  bottom: 788,
  footTop: 792,
  codeTop: 776,
  codeWidth: 60,
} as const;
export const ONE_WIDTH = PAGE.width - 2 * ONE_PAGE.left;

export const POINTS_PER_MM = 72 / MM_PER_INCH;

/** Rules, from a hairline between rows to the bar over the title. */
export const RULE = { hair: 0.5, line: 1.5, box: 2.2, heavy: 5 } as const;
export const GREY = { rule: "#b4b4b4", words: "#444444" } as const;
