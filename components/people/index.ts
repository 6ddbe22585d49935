export { PersonFields } from "./person-fields";
export { PersonPanel } from "./person-panel";
