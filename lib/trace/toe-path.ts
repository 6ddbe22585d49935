import { ANSWER_COLUMNS, ANSWER_ROWS, STRIP } from "./strip-size";
import type { ToeLogits } from "./types";

/** One toe over the answer's columns, in rows of the strip. */
export interface ToePath {
  /** Place across, between rows: 0 is the upper edge of the first. */
  readonly rows: Float64Array;
  /** Spread of the answer about the path, rows. */
  readonly spread: Float64Array;
  /** Share of the answer that lies about the path, 0 to 1. */
  readonly sure: Float64Array;
  /** Share of it that says there is no toe. */
  readonly none: Float64Array;
}

/** The most rows a toe may move from one column of the answer to the next. */
const MOST_STEP = 6;
/** What a step of one row costs, in the logarithm of likelihood: a toe is ragged by a row or two. */
const STEP_COST = 0.12;
/** A column that says nothing is worth this and no less, so that a path may cross it. */
const LEAST = 1e-4;

/** Shares of the answer for one toe, row by row: a softmax over the rows and "none", column by column. */
export function shares(logits: ToeLogits, toe: 0 | 1): Float64Array {
  const out = new Float64Array(ANSWER_ROWS * ANSWER_COLUMNS);
  const base = toe * out.length;
  for (let column = 0; column < ANSWER_COLUMNS; column++) {
    let most = -Infinity;
    for (let row = 0; row < ANSWER_ROWS; row++)
      most = Math.max(most, logits[base + row * ANSWER_COLUMNS + column]!);
    let sum = 0;
    for (let row = 0; row < ANSWER_ROWS; row++) {
      const k = row * ANSWER_COLUMNS + column;
      out[k] = Math.exp(logits[base + k]! - most);
      sum += out[k]!;
    }
    for (let row = 0; row < ANSWER_ROWS; row++) out[row * ANSWER_COLUMNS + column]! /= sum;
  }
  return out;
}

/**
 * The likeliest line through the shares by dynamic programming (Viterbi 1967): the sum over columns of the log-share less a
 * cost on each step across. Beside it how much of the answer lies within `reachRows` of it, which is what it is sure of.
 */
export function toePath(share: Float64Array, reachRows: number): ToePath {
  const best = likeliestRows(share);
  const out = {
    rows: new Float64Array(ANSWER_COLUMNS),
    spread: new Float64Array(ANSWER_COLUMNS),
    sure: new Float64Array(ANSWER_COLUMNS),
    none: new Float64Array(ANSWER_COLUMNS),
  };
  for (let column = 0; column < ANSWER_COLUMNS; column++) {
    const middle = best[column]!;
    let [mass, first, second] = [0, 0, 0];
    for (
      let row = Math.max(0, Math.ceil(middle - reachRows));
      row <= Math.min(STRIP.rows - 1, middle + reachRows);
      row++
    ) {
      const p = share[row * ANSWER_COLUMNS + column]!;
      mass += p;
      first += p * (row - middle);
      second += p * (row - middle) ** 2;
    }
    const mean = mass > 0 ? first / mass : 0;
    out.rows[column] = middle + 0.5 + mean;
    out.spread[column] = mass > 0 ? Math.sqrt(Math.max(0, second / mass - mean * mean)) : reachRows;
    out.sure[column] = mass;
    out.none[column] = share[STRIP.rows * ANSWER_COLUMNS + column]!;
  }
  return out;
}

function likeliestRows(share: Float64Array): Int32Array {
  const { rows } = STRIP;
  const from = new Int8Array(rows * ANSWER_COLUMNS);
  let cost = new Float64Array(rows);
  const value = (row: number, column: number): number => {
    const left = 1 - share[rows * ANSWER_COLUMNS + column]!;
    return -Math.log(LEAST + share[row * ANSWER_COLUMNS + column]! * Math.max(0.05, left));
  };
  for (let row = 0; row < rows; row++) cost[row] = value(row, 0);
  for (let column = 1; column < ANSWER_COLUMNS; column++) {
    const next = new Float64Array(rows);
    for (let row = 0; row < rows; row++) {
      let least = Infinity;
      for (let step = -MOST_STEP; step <= MOST_STEP; step++) {
        const before = row - step;
        if (before < 0 || before >= rows) continue;
        const sum = cost[before]! + STEP_COST * step * step;
        if (sum < least) {
          least = sum;
          from[column * rows + row] = step;
        }
      }
      next[row] = least + value(row, column);
    }
    cost = next;
  }
  return walkBack(from, cost);
}

function walkBack(from: Int8Array, cost: Float64Array): Int32Array {
  const { rows } = STRIP;
  const path = new Int32Array(ANSWER_COLUMNS);
  let row = cost.indexOf(Math.min(...cost));
  for (let column = ANSWER_COLUMNS - 1; column >= 0; column--) {
    path[column] = row;
    row -= from[column * rows + row]!;
  }
  return path;
}
