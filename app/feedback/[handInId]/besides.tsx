import { BeadFacts, CausesBeside } from "@/components/course";
import { page, Panel } from "@/components/ui";
import { assessBead } from "@/lib/assess";
import { sheetDocument, summariseBead } from "@/lib/report";
import type { Found } from "./read-all";

/** What Toeline says of the bead, and the student's note where it is not under the photo. */
export function Besides({
  handIn,
  bead,
  units,
  context,
  withNote = true,
}: Pick<Found, "handIn" | "bead" | "units" | "context"> & { withNote?: boolean }) {
  const assessed = assessBead(bead, context);
  const sheet = sheetDocument(assessed, units.preferences);
  return (
    <>
      <BeadFacts summary={summariseBead(assessed, units.preferences)} href={`/beads/${bead.id}`} />
      <CausesBeside causes={sheet.causes} marked={sheet.marks.length > 0} />
      {withNote && handIn.note && (
        <Panel title="The student’s note">
          <p className={page.words}>{handIn.note}</p>
        </Panel>
      )}
    </>
  );
}
