import { alignPhotos, assessBead } from "@/lib/assess";
import type { BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { compareSheets, compareSizes, sheetDocument } from "@/lib/report";
import { assessContext } from "@/lib/shop";
import { lengthSystem } from "@/lib/units";
import { currentUnits } from "./current-units";

/** Which photo of each is looked at, counted from 0; left out: the one that says most. */
export interface PhotosAsked {
  readonly before?: number | undefined;
  readonly after?: number | undefined;
}

/** Two beads as they are laid side by side, each assessed once: sheets, pictures, what differs. */
export async function compareSides(db: Db, before: BeadRecord, after: BeadRecord, photos: PhotosAsked = {}) {
  const [{ preferences }, context] = await Promise.all([currentUnits(), assessContext(db)]);
  const [was, is] = [assessBead(before, context), assessBead(after, context)];
  const side = (assessed: typeof was, photo: number | undefined) => ({
    id: assessed.id,
    sheet: sheetDocument(assessed, preferences),
    aligned: alignPhotos(assessed),
    ...(photo === undefined ? {} : { photo }),
  });
  const [one, other] = [side(was, photos.before), side(is, photos.after)];
  return {
    before: one,
    after: other,
    comparison: compareSheets(one.sheet, other.sheet),
    sizes: compareSizes(was, is, preferences),
    system: lengthSystem(preferences.length),
  };
}
