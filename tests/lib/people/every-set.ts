import { rolesWith, roles, type HeldRoles, type Role } from "@/lib/people";

/** Every choice of some of the roles, the empty one too. */
export const everyChoice: readonly (readonly Role[])[] = roles.reduce<readonly (readonly Role[])[]>(
  (choices, role) => choices.flatMap((one) => [one, [...one, role]]),
  [[]],
);

/** Every set of roles a person can hold, with each of them leading in turn: 32. */
export const everySet: readonly HeldRoles[] = roles.flatMap((role) =>
  everyChoice.filter((one) => !one.includes(role)).map((also) => rolesWith(role, also)),
);

/** Each role of a set as somebody who holds nothing else. */
export const singles = ({ role, also }: HeldRoles): readonly HeldRoles[] =>
  [role, ...also].map((one) => rolesWith(one, []));
