export { renderScene, renderSceneOnThreads, renderTruth, type RenderedScene } from "./render-scene";
export { RenderParamsSchema, type RenderParams, type RenderParamsInput } from "./params";
export { scenarioNames, type ScenarioName } from "./scenarios";
export { encodePicture, type Encoding } from "./encode";
export { planeToImage, projectPoint, type Camera, type Matrix3, type Pixel } from "./camera/camera";
export type { ImperfectionTruth, PlaneTruth, SectionTruth, Truth } from "./truth";
