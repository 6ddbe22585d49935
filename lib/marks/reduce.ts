import type { Action } from "./action";
import { editDrawing } from "./edit-drawing";
import type { Drawing } from "./drawing";
import { advance, startHistory, stepBack, stepForward, type History } from "./history";
import { samePlain } from "./same";

/**
 * The history after one action. One action is one undo step. Total: an unknown id, a shape the drawing cannot hold
 * or an action that changes nothing gives the very same object back. A new action empties the future.
 */
export function reduce<D extends Drawing>(history: History<D>, action: Action<D>): History<D> {
  switch (action.type) {
    case "undo":
      return stepBack(history);
    case "redo":
      return stepForward(history);
    case "load":
      return history.past.length + history.future.length === 0 && samePlain(history.present, action.drawing)
        ? history
        : startHistory(action.drawing);
    default:
      return advance(history, editDrawing(history.present, action));
  }
}
