import { z } from "zod";
import { setupFields, type SetupField, type SetupFieldRow } from "./fields";
import { RUN_SETUP_VERSION, type SetupValue } from "./run-setup";

/** Null is "not known", and what is left out is not known. */
const known = <S extends z.ZodType>(schema: S) => schema.nullable().default(null as never);

function number({ quantity, bounds: { from, max } }: Extract<SetupFieldRow, { control: "number" }>) {
  const least = z.number();
  if (from === undefined) return least.positive().max(max);
  return (quantity === "count" ? least.int().min(from) : least.min(from)).max(max);
}

/** What one field may hold, out of its row. Free text is kept, only what is known is checked. */
function schemaOf(field: SetupField): z.ZodType {
  const row: SetupFieldRow = setupFields[field];
  if (field === "outdoors") return z.boolean();
  if (row.control === "number") return number(row);
  return "words" in row ? z.enum(Object.keys(row.words)) : z.string().trim().min(1).max(40);
}

type Known<T> = z.ZodDefault<z.ZodNullable<z.ZodType<T, T>>>;
type Shape = { readonly [F in SetupField]: Known<SetupValue<F>> };
const shape = Object.fromEntries(
  Object.keys(setupFields).map((field) => [field, known(schemaOf(field as SetupField))]),
) as unknown as Shape;

/** A set-up as it is stored and sent: what is read here has one key for each row of `setupFields`. */
export const RunSetupSchema = z.object({
  schemaVersion: z.literal(RUN_SETUP_VERSION).default(RUN_SETUP_VERSION),
  ...shape,
});
