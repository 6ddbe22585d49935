"use client";

import { useState } from "react";
import { Field } from "@/components/ui";
import { heldRoles, roleDuties, roleNames, roles, type HeldRoles, type Role } from "@/lib/people";
import styles from "./role-fields.module.css";

/** Which roles somebody has, each with what it may do; where there are several, which one leads. */
export function RoleFields({ start }: { start: HeldRoles | null }) {
  const [ticked, setTicked] = useState<readonly Role[]>(start ? heldRoles(start) : []);
  const held = roles.filter((role) => ticked.includes(role));
  const turn = (role: Role, on: boolean): void =>
    setTicked(on ? [...ticked, role] : ticked.filter((one) => one !== role));
  return (
    <>
      <fieldset className={styles.roles}>
        <legend>Roles</legend>
        {roles.map((role) => (
          <label key={role} className={styles.role}>
            <input
              type="checkbox"
              name="roles"
              value={role}
              checked={ticked.includes(role)}
              onChange={({ target }) => turn(role, target.checked)}
            />
            <span>
              <strong>{roleNames[role]}</strong>
              <span className={styles.duty}>{roleDuties[role]}</span>
            </span>
          </label>
        ))}
      </fieldset>
      {ticked.length === 0 && <p className={styles.duty}>None ticked: student or welder.</p>}
      {held.length > 1 && (
        <Field
          label="Mainly"
          hint="Their menu begins with it. Beads they begin are their own where it is welding."
        >
          {(ids) => (
            <select {...ids} name="leads" defaultValue={start?.role ?? ticked[0]}>
              {held.map((role) => (
                <option key={role} value={role}>
                  {roleNames[role]}
                </option>
              ))}
            </select>
          )}
        </Field>
      )}
    </>
  );
}
