export { Header } from "./header";
export type { MainPlace, MenuPlace } from "./menu-context";
export { MenuProvider } from "./menu-provider";
export { UnitSwitch } from "./unit-switch";
