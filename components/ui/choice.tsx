import type { SelectHTMLAttributes } from "react";

type SelectProps = Omit<SelectHTMLAttributes<HTMLSelectElement>, "value" | "onChange" | "children">;

/** A select over a fixed list of ids, each with its name: what comes back is one of the ids, never another string. */
export function Choice<T extends string>({
  value,
  options,
  nameOf,
  onChoose,
  ...rest
}: SelectProps & {
  value: T;
  options: readonly T[];
  nameOf: (option: T) => string;
  onChoose: (option: T) => void;
}) {
  return (
    <select
      {...rest}
      value={value}
      onChange={({ target }) => {
        const chosen = options.find((option) => option === target.value);
        if (chosen !== undefined) onChoose(chosen);
      }}
    >
      {options.map((option) => (
        <option key={option} value={option}>
          {nameOf(option)}
        </option>
      ))}
    </select>
  );
}
