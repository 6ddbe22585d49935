export { firstAnswer } from "./bench-assessment";
export { NewWorkbench } from "./new-workbench";
export { Workbench } from "./workbench";
