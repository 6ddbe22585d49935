export { Header } from "./header";
export { MenuProvider } from "./header-menu";
export { UnitSwitch } from "./unit-switch";
