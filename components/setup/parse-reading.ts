import type { Result } from "@/lib/base";
import { beadQuantityRows, type BeadQuantity } from "@/lib/measure";
import { parseAngle, parseLength, type UnitPreferences, type UnitsIssue } from "@/lib/units";

/**
 * A gauge reading as it is typed: degrees for an angle, else mm. A convexity below nought is a hollow face, of which a
 * bead keeps the throat: without its minus sign it would say that the face is full, and the fillet be taken for a larger one.
 */
export const parseReading = (
  quantity: BeadQuantity,
  text: string,
  units: UnitPreferences,
): Result<number, UnitsIssue> =>
  beadQuantityRows[quantity].unit === "deg"
    ? parseAngle(text)
    : parseLength(text, {
        default: units.length,
        allowZero: true,
        ...(quantity === "convexity" ? { belowZero: HOLLOW } : {}),
      });

const HOLLOW = "The face is hollow then: leave the convexity out and read the throat.";
