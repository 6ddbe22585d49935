import { assertNever } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import type { z } from "zod";
import type { DrawingAction } from "./action";
import { countAbout } from "./count-about";
import { DrawingSchema, MarkSchema, MOST_MARKS, ScaleSchema, ToesSchema } from "./drawing";
import type { Drawing, Mark, MarkShapeData } from "./drawing";
import { samePlain } from "./same";
import { insertShapePoint, moveShapeBy, moveShapePoint, removeShapePoint } from "./shape-edit";

const WeldLineSchema = DrawingSchema.shape.weldLine;

/** A mark with nothing said about it yet. */
export function newMark(id: string, imperfection: ImperfectionId, shape: MarkShapeData): Mark {
  return { id, imperfection, shape, place: null, stretch: null, patterns: [], gauge: [], note: "" };
}

/**
 * The drawing after one action. What the schema of stored drawings would refuse is not done, and then, as with an
 * unknown id or an action that changes nothing, the very same object comes back.
 */
export function editDrawing<D extends Drawing>(drawing: D, action: DrawingAction): D {
  switch (action.type) {
    case "mark.add":
      return addMark(drawing, action.mark);
    case "mark.remove": {
      const marks = drawing.marks.filter((mark) => mark.id !== action.id);
      return marks.length === drawing.marks.length ? drawing : { ...drawing, marks };
    }
    case "marks.remove":
      return eachOf(drawing, action.ids, (done, id) => editDrawing(done, { type: "mark.remove", id }));
    case "marks.setImperfection": {
      const { imperfection } = action;
      return eachOf(drawing, action.ids, (done, id) =>
        changeMark(done, { type: "mark.setImperfection", id, imperfection }),
      );
    }
    case "scale.set":
      return setPart(drawing, "scale", ScaleSchema.safeParse(action.scale));
    case "scale.clear":
      return drawing.scale === null ? drawing : { ...drawing, scale: null };
    case "weldLine.set":
      return setPart(drawing, "weldLine", WeldLineSchema.safeParse(action.points));
    case "weldLine.clear":
      return drawing.weldLine === null ? drawing : { ...drawing, weldLine: null };
    case "toes.set":
      return setPart(drawing, "toes", ToesSchema.safeParse(action.toes));
    case "toes.movePoint":
      return moveToe(drawing, action);
    case "toes.clear": {
      if (drawing.toes === undefined) return drawing;
      const { toes: _gone, ...rest } = drawing;
      return rest as typeof drawing;
    }
    default:
      return changeMark(drawing, action);
  }
}

const eachOf = <D extends Drawing>(drawing: D, ids: readonly string[], act: (done: D, id: string) => D): D =>
  ids.reduce(act, drawing);

/** A place that somebody put there is as good as a pick: nobody need doubt it more. */
function moveToe<D extends Drawing>(
  drawing: D,
  { toe, index, to }: Extract<DrawingAction, { type: "toes.movePoint" }>,
): D {
  const { toes } = drawing;
  const point = toes?.[toe][index];
  if (toes === undefined || point === undefined) return drawing;
  const moved = { ...point, x: to.x, y: to.y, sure: 1, sigmaPx: to.grainPx ?? 1 };
  return setPart(drawing, "toes", ToesSchema.safeParse({ ...toes, [toe]: toes[toe].with(index, moved) }));
}

type MarkChange = Exclude<
  DrawingAction,
  {
    type:
      | "mark.add"
      | "mark.remove"
      | `marks.${string}`
      | `scale.${string}`
      | `weldLine.${string}`
      | `toes.${string}`;
  }
>;

function changed(mark: Mark, action: MarkChange): Mark {
  switch (action.type) {
    case "mark.replaceShape":
      return { ...mark, shape: action.shape };
    case "mark.movePoint":
      return { ...mark, shape: moveShapePoint(mark.shape, action.index, action.to) };
    case "mark.moveBy":
      return { ...mark, shape: moveShapeBy(mark.shape, action.by) };
    case "mark.insertPoint":
      return { ...mark, shape: insertShapePoint(mark.shape, action.index, action.at) };
    case "mark.removePoint":
      return { ...mark, shape: removeShapePoint(mark.shape, action.index) };
    case "mark.setImperfection":
      return counted({ ...mark, imperfection: action.imperfection });
    case "mark.describe":
      return counted({ ...mark, ...action.about });
    default:
      return assertNever(action);
  }
}

/** A count that was taken back, or stands at a kind that does not come in numbers, leaves no trace. */
function counted({ aboutCount, ...mark }: Mark): Mark {
  const about = countAbout({ ...mark, aboutCount });
  return about === null ? mark : { ...mark, aboutCount: about };
}

function changeMark<D extends Drawing>(drawing: D, action: MarkChange): D {
  const index = drawing.marks.findIndex((mark) => mark.id === action.id);
  const mark = drawing.marks[index];
  if (mark === undefined) return drawing;
  const next = MarkSchema.safeParse(changed(mark, action));
  if (!next.success || next.data.id !== mark.id || samePlain(next.data, mark)) return drawing;
  return { ...drawing, marks: drawing.marks.with(index, next.data) };
}

function addMark<D extends Drawing>(drawing: D, mark: Mark): D {
  const taken = drawing.marks.some((other) => other.id === mark.id);
  if (taken || drawing.marks.length >= MOST_MARKS) return drawing;
  const next = MarkSchema.safeParse(mark);
  return next.success ? { ...drawing, marks: [...drawing.marks, next.data] } : drawing;
}

function setPart<D extends Drawing, Key extends "scale" | "weldLine" | "toes">(
  drawing: D,
  key: Key,
  parsed: z.ZodSafeParseResult<Drawing[Key]>,
): D {
  if (!parsed.success || samePlain(parsed.data, drawing[key])) return drawing;
  return { ...drawing, [key]: parsed.data };
}
