export { formStyles } from "./form-styles";
export { LengthField } from "./length-field";
export { parseReading } from "./parse-reading";
export { RangeFields } from "./range-fields";
export { SavedSetups } from "./saved-setups";
export { SetupFields } from "./setup-fields";
export { SetupForm } from "./setup-form";
export { useTyped } from "./use-typed";
