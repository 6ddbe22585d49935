export { SavedSetups, type SavedSetupsProps, type StoreAnswer } from "./saved-setups";
export { SetupForm, type SetupFormProps } from "./setup-form";
