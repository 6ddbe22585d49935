export { AtlasLinks } from "./atlas-links";
export { AtlasTiles } from "./atlas-tiles";
export { atlasAddress, AtlasView } from "./atlas-view";
export { CloseUp } from "./close-up";
export { TellApartCard } from "./tell-apart-card";
