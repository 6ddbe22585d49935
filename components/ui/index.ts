export { Button, buttonClass, type ButtonProps } from "./button";
export { Chip } from "./chip";
export { Choice } from "./choice";
export { Field } from "./field";
export { Panel, type PanelTone } from "./panel";
export { nothingSaid, SaidForm, SaidLine, type Said, type SaidAction } from "./said-form";
export { useTypedText } from "./use-typed-text";
