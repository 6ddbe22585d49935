export { SavedSetups } from "./saved-setups";
export { SetupForm } from "./setup-form";
export { useTyped } from "./use-typed";
