export { likelyMarks } from "@/lib/diagnose";
export { benchAssessment } from "./bench-assessment";
export { BesideNow } from "./beside";
export { shapeSize } from "./shape-size";
export { UnderPhotoNow } from "./under-photo";
