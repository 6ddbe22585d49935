import "server-only";

export { demoShop } from "./beads";
export { fillDemoShop } from "./fill-shop";
export { growShop, type Growth } from "./grow-shop";
