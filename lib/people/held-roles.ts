import { roleNames, roles, type Role } from "./roles";

/** The roles of one person. What they may do is what any of them may do. */
export interface HeldRoles {
  /** The one that leads: what they do mainly. Their menu begins with it, and it is named first. */
  readonly role: Role;
  /** Those held besides, each once, in the order of `roles`. */
  readonly also: readonly Role[];
}

/** Whether somebody has a role, be it the leading one or another. Everything that asks for a role asks here. */
export const holds = ({ role, also }: HeldRoles, wanted: Role): boolean =>
  role === wanted || also.includes(wanted);

/** All of them, the leading one first. */
export const heldRoles = ({ role, also }: HeldRoles): readonly Role[] => [role, ...also];

/** "Instructor, inspector" */
export const heldRoleNames = (held: HeldRoles): string =>
  heldRoles(held)
    .map((one, i) => (i === 0 ? roleNames[one] : roleNames[one].toLowerCase()))
    .join(", ");

/** One leading role and others, in whatever order and however often they were named; always the same for the same. */
export const rolesWith = (role: Role, others: readonly Role[]): HeldRoles => ({
  role,
  also: roles.filter((one) => one !== role && others.includes(one)),
});

/** As two columns hold it: `also` null where there is only the leading one, so that it is as it was before there were others. */
export interface RoleColumns {
  readonly role: string;
  readonly also: string | null;
}

export const roleColumns = ({
  role,
  also,
}: HeldRoles): { readonly role: Role; readonly also: string | null } => ({
  role,
  also: also.length === 0 ? null : also.join(" "),
});

/** Out of the columns. A further role that this version does not know gives nothing; a leading one: null, nobody. */
export function readRoles(columns: RoleColumns): HeldRoles | null {
  const role = roles.find((one) => one === columns.role);
  if (role === undefined) return null;
  const words = columns.also?.split(" ") ?? [];
  return rolesWith(
    role,
    roles.filter((one) => words.includes(one)),
  );
}
