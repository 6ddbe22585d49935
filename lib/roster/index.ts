import "server-only";

export {
  addStudent,
  closeGroup,
  createGroup,
  getGroup,
  joinGroup,
  leaveGroup,
  listGroups,
  type GroupRecord,
} from "./groups";
export { placesOfName, type NamePlace } from "./name-places";
export {
  addPerson,
  changePerson,
  getPerson,
  listPeople,
  notePassphrase,
  personNames,
  removePerson,
  setAccount,
  type PersonRecord,
} from "./people";
