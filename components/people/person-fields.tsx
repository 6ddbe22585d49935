import { Field } from "@/components/ui";
import type { HeldRoles } from "@/lib/people";
import { RoleFields } from "./role-fields";

/** Name, identification and roles of a person; `start` is what stands there. */
export function PersonFields({
  start,
}: {
  start?: HeldRoles & { readonly name: string | null; readonly mark: string | null };
}) {
  return (
    <>
      <Field label="Name">
        {(ids) => <input {...ids} name="name" defaultValue={start?.name ?? ""} required maxLength={120} />}
      </Field>
      <Field label="Identification" hint="Stamp or number that stands on records, such as W-07. No name.">
        {(ids) => <input {...ids} name="mark" defaultValue={start?.mark ?? ""} maxLength={20} />}
      </Field>
      <RoleFields start={start ?? null} />
    </>
  );
}
