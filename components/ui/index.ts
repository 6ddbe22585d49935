export { Button, buttonClass } from "./button";
export { Chip } from "./chip";
export { Choice } from "./choice";
export { Field } from "./field";
export { default as form } from "./form.module.css";
export { default as page } from "./page.module.css";
export { Panel, type PanelTone } from "./panel";
export { nothingSaid, SaidForm, SaidLine, type Said, type SaidAction } from "./said-form";
export { useTypedText } from "./use-typed-text";
