export { Button, buttonClass, type ButtonProps } from "./button";
export { Chip } from "./chip";
export { Choice } from "./choice";
export { Field } from "./field";
export { Panel, type PanelTone } from "./panel";
export { SaidForm, type FormAnswer } from "./said-form";
