import { Field } from "@/components/ui";
import { roleNames, roles, type Role } from "@/lib/people";

/** Name, identification and role of a person; `start` is what stands there. */
export function PersonFields({
  start,
}: {
  start?: { readonly name: string | null; readonly mark: string | null; readonly role: Role };
}) {
  return (
    <>
      <Field label="Name">
        {(ids) => <input {...ids} name="name" defaultValue={start?.name ?? ""} required maxLength={120} />}
      </Field>
      <Field label="Identification" hint="Stamp or number that stands on records, such as W-07. No name.">
        {(ids) => <input {...ids} name="mark" defaultValue={start?.mark ?? ""} maxLength={20} />}
      </Field>
      <Field label="Role">
        {(ids) => (
          <select {...ids} name="role" defaultValue={start?.role ?? "welder"}>
            {roles.map((role) => (
              <option key={role} value={role}>
                {roleNames[role]}
              </option>
            ))}
          </select>
        )}
      </Field>
    </>
  );
}
