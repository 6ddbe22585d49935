export { Header } from "./header";
export { lookScript } from "./look";
export { LookHere } from "./look-here";
export type { MainPlace, MenuPlace } from "./menu-context";
export { NoticeHere } from "./notice-here";
export { NoticeSwitch } from "./notice-switch";
export { MenuProvider } from "./menu-provider";
export { UnitSwitch } from "./unit-switch";
