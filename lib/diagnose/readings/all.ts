import type { Reader, Reading, ReadingContext } from "../reading";
import { inputReading } from "./electric";
import { factReadings } from "./facts";
import {
  directionReading,
  legReading,
  passSizeReading,
  progressionReading,
  situationReading,
  travelReading,
} from "./hand";
import { purgeReading, passReading, rootReading, surfaceReading, thicknessReading } from "./plate";
import { outdoorsReading } from "./shield";
import { windowReadings } from "./window";

const readers: readonly Reader[] = [
  factReadings,
  windowReadings,
  inputReading,
  outdoorsReading,
  surfaceReading,
  travelReading,
  legReading,
  passSizeReading,
  directionReading,
  progressionReading,
  situationReading,
  thicknessReading,
  passReading,
  rootReading,
  purgeReading,
];

/** All that the record says about causes; an unknown field gives no reading. */
export function readingsOf(context: ReadingContext): readonly Reading[] {
  return readers.flatMap((reader) => reader(context));
}
