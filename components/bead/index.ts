export { Workbench } from "./workbench";
