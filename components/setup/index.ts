export { SavedSetups, type SavedSetupsProps } from "./saved-setups";
export { SetupForm, type SetupFormProps } from "./setup-form";
export { useTyped } from "./use-typed";
