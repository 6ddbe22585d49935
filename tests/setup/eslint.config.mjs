import next from "@next/eslint-plugin-next";
import hooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";
import { functionLength } from "./function-length.mjs";

/** Tables and scenarios hold nothing but data. */
const tables = ["**/tables/**", "demo-images/scenarios/**"];
const house = { rules: { "function-length": functionLength } };
/** Longer functions that were there before the rule: a list to make shorter, never longer. */
const longer = (folder, except) => ({
  files: [`${folder}/**/*.ts`],
  ignores: tables,
  plugins: { house },
  rules: { "house/function-length": ["error", { except }] },
});

export default tseslint.config(
  {
    ignores: [
      ".next/",
      "node_modules/",
      "prisma/generated/",
      "data/",
      ".toeline/",
      "next-env.d.ts",
      "tests/.out/",
    ],
  },
  ...tseslint.configs.recommended,
  {
    rules: {
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: ["error", "always"],
      "no-console": "off",
    },
  },
  {
    files: ["app/**/*.{ts,tsx}", "components/**/*.{ts,tsx}"],
    plugins: { "@next/next": next, "react-hooks": hooks },
    rules: {
      ...next.configs.recommended.rules,
      "react-hooks/rules-of-hooks": "error",
      "react-hooks/exhaustive-deps": "error",
      "@next/next/no-img-element": "off", // photos are served by our own route at the size we ask for
    },
  },
  {
    files: ["{lib,components,app,demo-images}/**/*.{ts,tsx}"],
    ignores: tables,
    plugins: { house },
    rules: { "house/function-length": "error" },
  },
  // Run for every point or ray of a picture: in parts they would hand each other colours and directions made anew.
  longer("demo-images", ["createMarch", "createShade", "lightRows"]),
);
