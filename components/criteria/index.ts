export { CodeSet } from "./code-set";
export { CriteriaOptions } from "./criteria-options";
export { NewerVersion, newerVersion } from "./newer-version";
export { draftOf, emptyDraft, type ShopDraft } from "./shop-draft";
export { ShopEditor, type SavedShopSet } from "./shop-editor";
export { ShopLimits } from "./shop-limits";
export { type TriedBead, type TriedVerdict } from "./try-out";
export { Versions } from "./versions";
