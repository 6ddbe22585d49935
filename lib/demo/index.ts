import "server-only";

export { demoShop } from "./beads";
export { fillDemoShop } from "./fill-shop";
