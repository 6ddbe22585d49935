import { describe, expect, it } from "vitest";
import type { Aim } from "@/components/canvas-kit/use-aim";
import type { PointerPlan } from "@/components/canvas-kit/use-pointers";
import type { ViewControl } from "@/components/canvas-kit/use-view";
import { toPhoto, toScreen, wayOnPhoto, zoomAt, type View } from "@/components/canvas-kit/view";
import type { LaidPhoto } from "@/lib/assess";
import type { ToFrame } from "@/lib/assess/align-photo";
import {
  add,
  applyHomography,
  distance,
  greatestExtent,
  invertHomography,
  multiplyHomography,
  polylineLength,
  projectOnPolyline,
  type Homography,
  type Point,
} from "@/lib/geometry";
import {
  DrawingSchema,
  emptyDrawing,
  newMark,
  warpDrawing,
  type Drawing,
  type PhotoPoint,
} from "@/lib/marks";
import { mapPoint, mapPoints, type Calibration, type PlanePoint } from "@/lib/measure";
import { measureLength } from "@/lib/measure/figures";
import { beforeHorizon, localScales, thenInPlane } from "@/lib/measure/plane-map";
import { widthSeries } from "@/lib/measure/toes";
import type { SectionMeasures } from "@/lib/section";
import { filletCorner, onSide } from "@/lib/section/fillet-corner";
import { partsOf, picksOf } from "@/lib/section/picks";
import { planFillet } from "@/lib/section/plan-fillet";
import type { FoundStrip } from "@/lib/strip";
import { markerCorners } from "@/lib/strip/strip-layout";

interface Given {
  readonly px: PhotoPoint;
  readonly mm: PlanePoint;
  readonly css: Point<"view">;
  readonly drawing: Drawing;
  readonly calibration: Calibration;
  readonly section: SectionMeasures;
  readonly view: View;
  readonly control: ViewControl;
  readonly aim: Aim;
  readonly plan: PointerPlan;
  readonly laid: LaidPhoto;
  readonly toFrame: ToFrame;
  readonly strip: FoundStrip;
}

/**
 * Checked by the compiler and never run: each line under an `@ts-expect-error` compiled before points said which plane
 * they belong to, and one that compiles again is an error of its own.
 */
export const mixed = {
  arithmetic: ({ px, mm, css }: Given) => [
    distance(px, px),
    // @ts-expect-error from a pixel to a millimetre there is no distance
    distance(px, mm),
    // @ts-expect-error nor a sum
    add(mm, px),
    // @ts-expect-error nor from the photo to the screen
    distance(css, px),
    polylineLength([mm, mm]),
    // @ts-expect-error a line lies in one plane
    polylineLength([mm, px]),
    // @ts-expect-error an outline too
    greatestExtent([px, mm, px]),
    // @ts-expect-error and its points' feet
    projectOnPolyline(mm, [px, px]),
  ],

  maps: ({ px, mm, calibration: { map } }: Given) => {
    const back = invertHomography(map.homography)!;
    // @ts-expect-error the plane is mapped back into the photo
    const notMm: PlanePoint = applyHomography(back, mm);
    // @ts-expect-error and is no photo itself
    const notPx: Point<"photo"> = applyHomography(map.homography, px);
    return [
      notMm,
      notPx,
      multiplyHomography(back, map.homography),
      // @ts-expect-error two maps follow each other where one ends and the other begins
      multiplyHomography(map.homography, map.homography),
      // @ts-expect-error what is mapped is a pixel
      applyHomography(map.homography, mm),
      // @ts-expect-error what follows stays in the plane
      thenInPlane(map, back),
    ];
  },

  sizes: ({ px, mm, drawing, calibration }: Given) => [
    measureLength(calibration, [px, px]),
    // @ts-expect-error what was mapped once is not mapped again
    measureLength(calibration, mapPoints(calibration.map, [px, px])),
    // @ts-expect-error likewise
    mapPoint(calibration.map, mapPoint(calibration.map, px)),
    // @ts-expect-error the horizon is asked of pixels
    beforeHorizon(calibration, [mm]),
    // @ts-expect-error the scale at a place, likewise
    localScales(calibration.map, mm),
    // @ts-expect-error widths come out of the plane
    widthSeries(drawing.weldLine!, drawing.weldLine!, 5),
    // @ts-expect-error a mark's line is in pixels, and its length no millimetres
    polylineLength<"plane">(drawing.weldLine!),
  ],

  section: ({ px, mm, section }: Given, corner = filletCorner([mm, mm], [mm, mm], [mm, mm, mm])) => [
    // @ts-expect-error toes are shown on the photo
    distance(section.places.toes[0]!, mm),
    corner.ok && onSide(corner.value, 0, mm),
    // @ts-expect-error a corner in millimetres says nothing of a pixel
    corner.ok && onSide(corner.value, 0, px),
    // @ts-expect-error the outline's parts are looked for in millimetres
    corner.ok && planFillet(corner.value, partsOf(picksOf({} as never), [px]).ring, mm, [null, null]),
  ],

  screen: ({ px, css, view, drawing, laid, toFrame }: Given) => [
    toPhoto(view, toScreen(view, px)),
    // @ts-expect-error a pointer is not on the photo
    toScreen(view, css),
    // @ts-expect-error a photo point is no pointer
    toPhoto(view, px),
    // @ts-expect-error the screen is zoomed about a place of its own
    zoomAt(view, px, 2, 0.1),
    warpDrawing(drawing, laid.toView),
    // @ts-expect-error a drawing is laid into a view, not into a weld's frame
    warpDrawing(drawing, toFrame),
  ],

  hand: ({ px, css, view, control, aim, plan }: Given) => [
    control.panBy(css),
    // @ts-expect-error the view is pushed by a way on the screen
    control.panBy(px),
    // @ts-expect-error and closes in on a place of it
    control.zoomBy(2, px),
    // @ts-expect-error what is brought into sight lies on the photo
    control.show(css),
    aim.beside(css),
    // @ts-expect-error the cross-hair goes by a way on the screen
    aim.beside(px),
    // @ts-expect-error to a place on the photo
    aim.goTo(css),
    // @ts-expect-error what is gripped lies on the photo
    plan.grip(css, 10),
    // @ts-expect-error what was turned into a way on the photo is not turned again
    wayOnPhoto(view, wayOnPhoto(view, css)),
  ],

  strip: ({ px, strip, calibration }: Given) => [
    distance(strip.corners[0]!, px),
    // @ts-expect-error places on the strip are in its own millimetres
    mapPoint(calibration.map, markerCorners(0)![0]!),
  ],

  spaces: ({ px }: Given) => {
    const kept: Point<"photo"> = add(px, { x: 1, y: 1 });
    // @ts-expect-error one space is not part of two
    const either: Point<"photo" | "plane"> = px;
    // @ts-expect-error a map of one pair is none of another
    const other: Homography<"photo", "view"> = {} as Homography<"photo", "plane">;
    return [kept, either, other];
  },
};

describe("the plane a point belongs to", () => {
  it("is known to the compiler alone: a drawing is read and written as it stands", () => {
    const line = {
      kind: "line" as const,
      points: [
        { x: 1, y: 2 },
        { x: 3, y: 4, grainPx: 2 },
      ],
    };
    const stored = JSON.stringify({ ...emptyDrawing, marks: [newMark("m", "undercut", line)] });
    const read = DrawingSchema.parse(JSON.parse(stored));
    expect(JSON.stringify(read)).toBe(stored);
    const [first] = read.marks;
    const points = first?.shape.kind === "line" ? first.shape.points : [];
    expect(points.map((point) => Reflect.ownKeys(point))).toEqual([
      ["x", "y"],
      ["x", "y", "grainPx"],
    ]);
    expect(Reflect.ownKeys(add(points[0]!, points[1]!))).toEqual(["x", "y"]);
  });
});
