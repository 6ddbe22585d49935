/**
 * A function is up to 40 lines. One that returns JSX may be up to 80 where it is layout: of its body no more than `logic`
 * lines lie outside the JSX or in a handler written out within it.
 */
const FUNCTIONS = new Set(["FunctionDeclaration", "FunctionExpression", "ArrowFunctionExpression"]);
const JSX = new Set(["JSXElement", "JSXFragment"]);

const linesOf = ({ loc }) =>
  Array.from({ length: loc.end.line - loc.start.line + 1 }, (_, i) => loc.start.line + i);

const nameOf = (node) =>
  FUNCTIONS.has(node.type) ? (node.id?.name ?? node.parent?.id?.name ?? node.parent?.key?.name) : undefined;

/** The nodes below one, without those that lead up again. */
function below(node) {
  return Object.entries(node)
    .filter(([key]) => key !== "parent" && key !== "loc" && key !== "range" && key !== "tokens")
    .flatMap(([, value]) => (Array.isArray(value) ? value : [value]))
    .filter((value) => value !== null && typeof value === "object" && typeof value.type === "string");
}

/** Lines that are markup alone: those of the JSX, but for handlers of more than a line. */
function layoutLines(node, found = new Set(), inJsx = false) {
  const isJsx = inJsx || JSX.has(node.type);
  if (JSX.has(node.type) && !inJsx) for (const line of linesOf(node)) found.add(line);
  const isHandler = inJsx && node.type === "BlockStatement" && linesOf(node).length > 1;
  if (isHandler) for (const line of linesOf(node)) found.delete(line);
  for (const child of below(node)) layoutLines(child, found, isHandler ? false : isJsx);
  return found;
}

export const functionLength = {
  meta: {
    type: "suggestion",
    schema: [
      {
        type: "object",
        properties: {
          most: { type: "integer" },
          layout: { type: "integer" },
          logic: { type: "integer" },
          /** Functions that are longer and known to be. */
          except: { type: "array", items: { type: "string" } },
        },
        additionalProperties: false,
      },
    ],
    messages: {
      long: "{{name}} is {{lines}} lines; {{most}} is the most.",
      layout: "{{name}} is {{lines}} lines; with JSX {{layout}} is the most.",
      logic:
        "{{name}} is {{lines}} lines, {{logic}} of them not layout; beyond {{most}} lines that may be {{mostLogic}}.",
    },
  },
  create(context) {
    const { most = 40, layout = 80, logic: mostLogic = 20, except = [] } = context.options[0] ?? {};
    const isKnown = (node) => node !== null && (except.includes(nameOf(node)) || isKnown(node.parent));
    const check = (node) => {
      const lines = linesOf(node).length;
      if (lines <= most || isKnown(node)) return;
      const name = nameOf(node) ?? "This function";
      const markup = layoutLines(node.body);
      const logic = linesOf(node.body).filter((line) => !markup.has(line)).length;
      const report = (messageId) =>
        context.report({ node, messageId, data: { name, lines, most, layout, logic, mostLogic } });
      if (markup.size === 0) report("long");
      else if (lines > layout) report("layout");
      else if (logic > mostLogic) report("logic");
    };
    return Object.fromEntries([...FUNCTIONS].map((type) => [type, check]));
  },
};
