import { setupFieldNames } from "@/lib/setup";
import { setupFields, type NumberField } from "@/lib/setup/fields";

/** Every field of the set-up that takes a number. */
export const numberFields = setupFieldNames.filter(
  (field): field is NumberField => setupFields[field].control === "number",
);
