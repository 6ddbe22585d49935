import { functionLength } from "./function-length.mjs";
import { pageLink } from "./page-link.mjs";

/** Rules of this house, as the linter loads them (`.oxlintrc.json`). */
export default {
  meta: { name: "house" },
  rules: { "function-length": functionLength, "page-link": pageLink },
};
