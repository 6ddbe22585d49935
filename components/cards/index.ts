export { CardForm } from "./card-form";
export { CardView } from "./card-view";
