import { CriteriaOptions } from "@/components/criteria";
import { LengthField } from "@/components/setup";
import { Field } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import type { JobWeld } from "@/lib/inspect";
import type { UnitPreferences } from "@/lib/units";

/** What size a weld is to have, and by what it is judged where that is not what the job says. */
export function AskedSize({
  weld,
  units,
  criteria,
  change,
}: {
  readonly weld: JobWeld;
  readonly units: UnitPreferences;
  readonly criteria: readonly CriteriaSummary[];
  readonly change: (weld: Partial<JobWeld>) => void;
}) {
  return (
    <>
      <LengthField
        label="Leg asked for"
        value={weld.legMm ?? null}
        units={units}
        allowZero
        onChange={(mm) => change({ legMm: mm === 0 ? null : mm })}
      />
      <LengthField
        label="Throat asked for"
        hint="Between square plates; where a leg is asked too, the leg counts."
        value={weld.throatMm ?? null}
        units={units}
        allowZero
        onChange={(mm) => change({ throatMm: mm === 0 ? null : mm })}
      />
      <Field label="Criteria of this weld">
        {(ids) => (
          <select
            {...ids}
            value={weld.criteriaId ?? ""}
            onChange={({ target }) => change({ criteriaId: target.value || null })}
          >
            <option value="">those of the job</option>
            <CriteriaOptions criteria={criteria} />
          </select>
        )}
      </Field>
    </>
  );
}
