import { later } from "@/components/ui";

/**
 * What the workbench stands without: working out sizes, causes and verdict, and the parts that show them. It is two thirds
 * of the page, and a photo can be looked at and drawn on before it is here.
 */
export const benchCode = later(() => import("./bench-late"));
