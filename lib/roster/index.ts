import "server-only";

export {
  addRoster,
  addStudent,
  closeGroup,
  createGroup,
  getGroup,
  joinGroup,
  leaveGroup,
  listGroups,
  type GroupRecord,
} from "./groups";
export { changePerson, isLastOwner } from "./change-person";
export { chooseByCode, chooseOwnPassphrase, giveOneTimeCode, takeOffSecondFactor } from "./passphrases";
export { placesOfName, type NamePlace } from "./name-places";
export {
  addPerson,
  getPerson,
  listPeople,
  personNames,
  removePerson,
  setAccount,
  type PersonRecord,
} from "./people";
