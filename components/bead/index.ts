export { NewWorkbench } from "./new-workbench";
export { Workbench } from "./workbench";
