"use client";

import { SaveBar, useEdited, type Editing } from "@/components/saving";
import { LengthField } from "@/components/setup";
import { Field, form, Panel } from "@/components/ui";
import type { InspectionDraft, JobWeld } from "@/lib/inspect";
import { lengthText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { ChoiceField, NumberField, TextField } from "./fields";
import styles from "./inspect.module.css";
import { AsLastTime, Qualified } from "./qualified";
import { SampleFields } from "./sample-fields";
import { WeldsLooked } from "./welds-looked";

interface Choice {
  readonly id: string;
  readonly title: string;
}

/** How the look was made, with what, and at which welds; saved as a whole, shortly after each change. */
export function DraftEditor({
  instruments,
  welds,
  units,
  before,
  ...editing
}: Editing<InspectionDraft> & {
  /** The inspection before this one, to look the same way again; null: there was none. */
  readonly before: { readonly number: number; readonly draft: InspectionDraft } | null;
  readonly instruments: readonly Choice[];
  readonly welds: readonly JobWeld[];
  readonly units: UnitPreferences;
}) {
  const edited = useEdited(editing, "auto");
  const { content, change, submit } = edited;
  const toggle = (id: string, on: boolean) =>
    change({
      instrumentIds: on ? [...content.instrumentIds, id] : content.instrumentIds.filter((one) => one !== id),
    });
  return (
    <Panel title="How it was looked at" tone="straw">
      <form
        className={styles.wide}
        aria-label="Inspection"
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <AsLastTime before={before} units={units} change={change} />
        <Viewing content={content} change={change} units={units} />
        <Qualified content={content} change={change} />
        <fieldset className={styles.item}>
          <legend>Instruments used</legend>
          {instruments.length === 0 && <p>None are entered yet: see “Instruments” in the menu.</p>}
          {instruments.map(({ id, title }) => (
            <label key={id} className={form.check}>
              <input
                type="checkbox"
                checked={content.instrumentIds.includes(id)}
                onChange={({ target }) => toggle(id, target.checked)}
              />
              {title}
            </label>
          ))}
        </fieldset>
        <SampleFields content={content} welds={welds} change={change} />
        <WeldsLooked
          looked={content.welds}
          welds={welds}
          units={units}
          onChange={(next) => change({ welds: next })}
        />
        <Field label="Remarks" hint="No names: they would stay on the record for good.">
          {(ids) => (
            <textarea
              {...ids}
              rows={3}
              value={content.remarks}
              maxLength={4000}
              onChange={({ target }) => change({ remarks: target.value })}
            />
          )}
        </Field>
        <SaveBar edited={edited}>Save the inspection</SaveBar>
      </form>
    </Panel>
  );
}

interface Part {
  readonly content: InspectionDraft;
  readonly change: (part: Partial<InspectionDraft>) => void;
}

function Viewing({ content, change, units }: Part & { readonly units: UnitPreferences }) {
  return (
    <div className={styles.grid}>
      <TextField
        label="Report number"
        hint="as your firm numbers its reports"
        value={content.reportNumber ?? ""}
        onChange={(reportNumber) => change({ reportNumber })}
        most={60}
      />
      <TextField
        label="Day of the inspection"
        type="date"
        value={content.examinedOn ?? ""}
        onChange={(day) => change({ examinedOn: day || null })}
      />
      <ChoiceField
        label="Look"
        value={content.look}
        onChange={(look) => change({ look })}
        choices={[
          { id: "direct", title: "direct, by eye" },
          { id: "remote", title: "remote: mirror, borescope or camera" },
        ]}
      />
      {content.look === "remote" && (
        <TextField
          label="By what"
          value={content.remoteAid}
          onChange={(remoteAid) => change({ remoteAid })}
        />
      )}
      <NumberField
        label="Light at the surface, lx"
        hint="at least 350, better 500 (ISO 17637)"
        value={content.lightLux}
        onChange={(lightLux) => change({ lightLux })}
      />
      <LengthField
        label="Distance of the eye"
        hint={`${lengthText(600, units)} or less (ISO 17637).`}
        value={content.distanceMm}
        units={units}
        allowZero
        onChange={(distanceMm) => change({ distanceMm })}
      />
      <NumberField
        label="Viewing angle, degrees"
        hint="30 or more to the surface (ISO 17637)"
        value={content.angleDeg}
        onChange={(angleDeg) => change({ angleDeg })}
      />
      <TextField
        label="Surface"
        hint="as welded, slag off, brushed …"
        value={content.surface}
        onChange={(surface) => change({ surface })}
        most={200}
      />
      <TextField
        label="Examining body"
        hint="where it is not the maker"
        value={content.examiningBody}
        onChange={(examiningBody) => change({ examiningBody })}
      />
    </div>
  );
}
