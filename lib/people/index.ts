export { actorRef, nobody, ownerHere, personIdOf, type Actor } from "./actor";
export { deeds, type Deed } from "./deeds";
export {
  heldRoleNames,
  heldRoles,
  holds,
  readRoles,
  roleColumns,
  rolesWith,
  type HeldRoles,
  type RoleColumns,
} from "./held-roles";
export { may, mayGive, reach, roleFor, signs, type Thing } from "./may";
export { roleDuties, roleNames, roles, type Role } from "./roles";
export { scopeNames, scopeOfDeed, scopes, type Scope } from "./scopes";
