import "server-only";

export { assessContext, weighedByCounts, type ShopContext } from "./assess-context";
export {
  getShopSet,
  listShopSets,
  newestVersions,
  saveShopSet,
  shopSetsToChoose,
  withdrawShopSet,
  writeShopSet,
} from "./criteria";
export { deleteSetup, lastSetup, listSavedSetups, saveSetup, type SavedSetupRecord } from "./setups";
export { resetShopCounts, shopCounts } from "./shop-counts";
export { tablesDigest } from "./tables-digest";
