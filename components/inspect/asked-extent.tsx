import { LengthField } from "@/components/setup";
import { wholeWeld, type JobWeld } from "@/lib/inspect";
import type { UnitPreferences } from "@/lib/units";
import { ExtentField } from "./extent-field";
import { TextField } from "./fields";

/** How long a weld is and how much of it is to be inspected; which part, where that is not all. */
export function AskedExtent({
  weld,
  units,
  change,
}: {
  readonly weld: JobWeld;
  readonly units: UnitPreferences;
  readonly change: (weld: Partial<JobWeld>) => void;
}) {
  const { asked, askedNote, lengthMm } = weld;
  const isWhole = asked?.kind === "percent" && asked.percent === wholeWeld.percent;
  return (
    <>
      <LengthField
        label="Length of the weld"
        hint="Lets % and length be compared."
        value={lengthMm}
        units={units}
        allowZero
        onChange={(length) => change({ lengthMm: length === 0 ? null : length })}
      />
      <ExtentField
        label="To inspect"
        extent={asked}
        units={units}
        allowZero={false}
        onChange={(next) => change({ asked: next })}
      />
      {(!isWhole || askedNote !== "") && (
        <TextField
          label="Which part"
          hint="goes on the record beside the number"
          value={askedNote}
          onChange={(note) => change({ askedNote: note })}
          most={80}
        />
      )}
    </>
  );
}
