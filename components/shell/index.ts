export { Header } from "./header";
export { lookScript } from "./look";
export { LookHere } from "./look-here";
export type { MainPlace, MenuPlace } from "./menu-context";
export { MenuProvider } from "./menu-provider";
export { UnitSwitch } from "./unit-switch";
