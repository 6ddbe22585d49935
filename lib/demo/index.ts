import "server-only";

export { demoShop } from "./beads";
export { clearDemoShop, demoToClear } from "./clear-demo";
export { fillDemoShop } from "./fill-shop";
export { isDemoThere } from "./shop-rows";
