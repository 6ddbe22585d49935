import type { Rule } from "eslint";

export const functionLength: Rule.RuleModule;
