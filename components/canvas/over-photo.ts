export { ImperfectionPicker } from "./imperfection-picker";
export { KeyList } from "./key-list";
export { LookPanel } from "./look-panel";
