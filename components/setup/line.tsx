"use client";

import {
  fieldRow,
  type ChoiceField as ChoiceName,
  type NumberField,
  type SetupField,
  type TextField as TextName,
} from "@/lib/setup";
import { ChoiceField } from "./choice-field";
import { ClassField } from "./class-field";
import styles from "./fields.module.css";
import { useForm } from "./form-context";
import { QuantityField } from "./quantity-field";
import { SelectField } from "./select-field";
import { TextField } from "./text-field";

const WIRE_SIZES = [0.8, 0.9, 1.2, 1.6];
const ROD_SIZES = [2.4, 3.2, 4];

/** Keys take a line of their own, whatever is typed or picked from a list stands side by side. */
export function Line({ fields }: { fields: readonly SetupField[] }) {
  const [first] = fields;
  if (first === undefined) return null;
  const controls = fields.map((field) => <Control key={field} field={field} />);
  return fieldRow(first).control === "keys" ? controls : <div className={styles.grid}>{controls}</div>;
}

function Control({ field }: { field: SetupField }) {
  const { process } = useForm().setup;
  const rods = process === "SMAW" || process === "GTAW";
  const sizes = field === "electrodeDiameterMm" ? { quick: rods ? ROD_SIZES : WIRE_SIZES } : {};
  switch (fieldRow(field).control) {
    case "keys":
      return <ChoiceField name={field as ChoiceName} />;
    case "list":
      return <SelectField name={field as ChoiceName} />;
    case "class":
      return <ClassField />;
    case "text":
      return <TextField name={field as TextName} />;
    case "number":
      return <QuantityField name={field as NumberField} {...sizes} />;
  }
}
