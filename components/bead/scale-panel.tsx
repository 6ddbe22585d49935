import type { ScalePickKind } from "@/components/canvas";
import { Button } from "@/components/ui";
import type { Scale } from "@/lib/marks";
import { defaultMeasureOptions, measureSentence, type Calibrated } from "@/lib/measure";
import { lengthText, scaleText } from "@/lib/report";
import { formatAngle, formatFigures, type UnitPreferences } from "@/lib/units";
import { ScaleCorrections } from "./scale-corrections";
import { ScaleDrawing } from "./scale-drawing";
import { scaleObjects } from "./scale-objects";
import type { StripPhoto } from "./look-for-strip";
import { StripFinder } from "./strip-finder";
import styles from "./scale-panel.module.css";

/** What the scale says, or that there is none; with the Scale tool in hand, what to pick it from and how to lose it. */
export function ScalePanel({
  scale,
  calibration,
  photo,
  units,
  picking,
  kind,
  onKind,
  onRemove,
  onFound,
  onCorrected,
}: {
  scale: Scale | null;
  /** What the scale came to; null while it is worked out. */
  calibration: Calibrated | null;
  photo: StripPhoto;
  units: UnitPreferences;
  /** The Scale tool is in hand. */
  picking: boolean;
  kind: ScalePickKind;
  onKind: (kind: ScalePickKind) => void;
  onRemove: () => void;
  /** The printed strip was found in the photo. */
  onFound: (scale: Scale) => void;
  /** The same scale with what the person measured about it. */
  onCorrected: (scale: Scale) => void;
}) {
  return (
    <div className={styles.panel} data-picking={picking}>
      {picking && <StripFinder photo={photo} onFound={onFound} />}
      {picking && (
        <div className={styles.objects} role="group" aria-label="What the scale is picked from">
          {scaleObjects.map((object) => (
            <button
              key={object.kind}
              type="button"
              className={styles.object}
              aria-pressed={object.kind === kind}
              onClick={() => onKind(object.kind)}
            >
              <ScaleDrawing kind={object.kind} />
              <span>
                <strong>{object.name}</strong>
                <span className={styles.how}>{object.how}</span>
              </span>
            </button>
          ))}
        </div>
      )}
      <Reading scale={scale} found={calibration} units={units} />
      {scale !== null && (
        // A new scale object begins with an empty form; a corner that was moved keeps it.
        <ScaleCorrections
          key={`${scale.kind} ${units.length}`}
          scale={scale}
          units={units}
          onScale={onCorrected}
        />
      )}
      {picking && scale !== null && (
        <div>
          <Button onClick={onRemove}>Remove the scale</Button>
        </div>
      )}
    </div>
  );
}

function Reading({
  scale,
  found,
  units,
}: {
  scale: Scale | null;
  found: Calibrated | null;
  units: UnitPreferences;
}) {
  if (scale === null)
    return (
      <p className={styles.note} data-testid="scale-note">
        No scale: sizes are not known. Press Scale and pick a thing whose size you know.
      </p>
    );
  // Sizes come a moment after the drawing: where there is a scale, "no scale" was said of the one before it.
  const fault = found?.ok === false ? found.issues.find(({ code }) => code !== "no-scale") : undefined;
  const stated =
    scale.kind === "two-points"
      ? `${scaleText(scale, units)} between the two points`
      : scaleText(scale, units);
  return (
    <>
      <p className={styles.note} data-testid="scale-note">
        Scale set: {stated}.{" "}
        {found?.ok &&
          `${pixelText(found.value.mmPerPx, units)} per photo pixel, ${tilt(found.value.tiltDeg)}.`}
      </p>
      {fault && (
        <p className={styles.problem} role="alert">
          {measureSentence(fault)}
        </p>
      )}
      <p>{planeText(scale, units)}</p>
    </>
  );
}

function planeText({ surface }: Scale, units: UnitPreferences): string {
  const spread = lengthText(surface?.plusMinusMm ?? defaultMeasureOptions.heightHalfWidthMm, units);
  if (!surface || surface.aboveMm === 0)
    return `It holds in the plane the object lies on. The error stated with each size allows for a mark up to ${spread} above or below that plane.`;
  const off = lengthText(Math.abs(surface.aboveMm), units);
  const side = surface.aboveMm > 0 ? "above" : "below";
  return `Sizes are those of a surface ${off} ${side} the object's plane, give or take ${spread}.`;
}

/** A pixel is small: thousandths of an inch, where inches are read. */
const pixelText = (mmPerPx: number, units: UnitPreferences): string =>
  units.length === "in"
    ? formatFigures("thousandths", mmPerPx, "inch", 2)
    : formatFigures("length", mmPerPx, "metric", 2);

function tilt(tiltDeg: number | null): string {
  return tiltDeg === null ? "tilt not seen" : `camera tilted ${formatAngle(tiltDeg)}`;
}
