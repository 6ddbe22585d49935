import { Field } from "@/components/ui";
import { instrumentKinds, instrumentNames, type Instrument } from "@/lib/inspect";

/** The fields of one instrument within a form. */
export function InstrumentFields({ start }: { readonly start?: Instrument }) {
  const input = (label: string, name: keyof Instrument, type: string, hint?: string) => (
    <Field label={label} hint={hint}>
      {(ids) => (
        <input
          {...ids}
          name={name}
          type={type}
          step="any"
          min={type === "number" ? 0 : undefined}
          defaultValue={start?.[name] ?? ""}
          maxLength={80}
          required={name === "name"}
          autoComplete="off"
        />
      )}
    </Field>
  );
  return (
    <>
      <Field label="Kind">
        {(ids) => (
          <select {...ids} name="kind" defaultValue={start?.kind}>
            {instrumentKinds.map((kind) => (
              <option key={kind} value={kind}>
                {instrumentNames[kind]}
              </option>
            ))}
          </select>
        )}
      </Field>
      {input("Name", "name", "text", "what it is called in the shop")}
      {input("Serial number", "serial", "text")}
      {input("Smallest step", "resolution", "number", "mm, degrees or lux")}
      {input("Calibrated on", "calibratedOn", "date")}
      {input("Calibration due", "dueOn", "date")}
    </>
  );
}
