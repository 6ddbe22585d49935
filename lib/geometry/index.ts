export { type Point } from "./point";
