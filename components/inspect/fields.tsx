import { Field } from "@/components/ui";

interface Common {
  readonly label: string;
  readonly hint?: string;
}

export function TextField({
  label,
  hint,
  value,
  onChange,
  most = 120,
  type = "text",
}: Common & {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly most?: number;
  readonly type?: "text" | "date";
}) {
  return (
    <Field label={label} hint={hint}>
      {(ids) => (
        <input
          {...ids}
          type={type}
          value={value}
          maxLength={most}
          autoComplete="off"
          onChange={(event) => onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

/** A number or nothing: an empty field is "not recorded", never zero. */
export function NumberField({
  label,
  hint,
  value,
  onChange,
}: Common & { readonly value: number | null; readonly onChange: (value: number | null) => void }) {
  return (
    <Field label={label} hint={hint}>
      {(ids) => (
        <input
          {...ids}
          type="number"
          step="any"
          min="0"
          inputMode="decimal"
          defaultValue={value ?? ""}
          onChange={({ target }) => onChange(target.value === "" ? null : target.valueAsNumber)}
        />
      )}
    </Field>
  );
}

/** One of a list, or "not recorded". */
export function ChoiceField<T extends string>({
  label,
  value,
  onChange,
  choices,
}: Common & {
  readonly value: T | null;
  readonly onChange: (value: T | null) => void;
  readonly choices: readonly { readonly id: T; readonly title: string }[];
}) {
  return (
    <Field label={label}>
      {(ids) => (
        <select
          {...ids}
          value={value ?? ""}
          onChange={({ target }) => onChange(choices.find(({ id }) => id === target.value)?.id ?? null)}
        >
          <option value="">not recorded</option>
          {choices.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
