import type { Reader, Reading, ReadingContext } from "../reading";
import {
  ampsForPlateReading,
  feedCapReading,
  inputReading,
  polarityReading,
  rodSizeReading,
} from "./electric";
import {
  directionReading,
  legReading,
  passSizeReading,
  progressionReading,
  situationReading,
  travelReading,
  workAngleReading,
} from "./hand";
import {
  gapReading,
  metalReading,
  passReading,
  rootReading,
  surfaceReading,
  thicknessReading,
} from "./plate";
import { gasReading, outdoorsReading, sprayGasReading } from "./shield";
import { balanceReading, windowReadings } from "./window";

const readers: readonly Reader[] = [
  polarityReading,
  gasReading,
  sprayGasReading,
  windowReadings,
  balanceReading,
  ampsForPlateReading,
  inputReading,
  feedCapReading,
  rodSizeReading,
  outdoorsReading,
  surfaceReading,
  travelReading,
  legReading,
  passSizeReading,
  workAngleReading,
  directionReading,
  progressionReading,
  situationReading,
  thicknessReading,
  gapReading,
  passReading,
  rootReading,
  metalReading,
];

/** All that the record says about causes; an unknown field gives no reading. */
export function readingsOf(context: ReadingContext): readonly Reading[] {
  return readers.flatMap((reader) => reader(context));
}
