export { actorRef, nobody, ownerHere, personIdOf, type Actor } from "./actor";
export { deeds, type Deed } from "./deeds";
export { may, reach, type Thing } from "./may";
export { roleDuties, roleNames, roles, type Role } from "./roles";
export { scopeNames, scopeOfDeed, scopes, type Scope } from "./scopes";
