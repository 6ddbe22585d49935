import { scopeNames, scopeOfDeed } from "@/lib/people";
import { operations, type Body, type Operation } from "./operations";
import { componentSchemas, type SchemaName } from "./schemas";

const TOKEN = "token";

const refTo = (name: SchemaName) => ({ $ref: `#/components/schemas/${name}` });

function content(body: Body): Record<string, unknown> {
  return "json" in body ? { "application/json": { schema: refTo(body.json) } } : { [body.file]: {} };
}

const refusalWords: Readonly<Record<number, string>> = {
  400: "It could not be read.",
  401: "Nobody is signed in and no token was sent.",
  403: "Role or scopes do not reach this far.",
  404: "There is none.",
  409: "It does not fit what is here now.",
  413: "Larger than is taken.",
  415: "Another kind of file than is taken.",
  422: "It was read and cannot be.",
  429: "Too much at once; the header retry-after says how many seconds to wait.",
  503: "The store does not answer.",
  507: "The disk is full.",
};

function refusals({ deed, refusals: own, refusalBody = "Issues" }: Operation): Record<string, unknown> {
  const door = deed === null ? [] : [401, 403].map((status) => [status, "Issues"] as const);
  const all = [...own.map((status) => [status, refusalBody] as const), ...door];
  return Object.fromEntries(
    all.map(([status, body]) => [
      String(status),
      { description: refusalWords[status] ?? "Refused.", content: content({ json: body }) },
    ]),
  );
}

/** `{beadId}` in a path is a parameter of every operation on it. */
function pathParameters(path: string): readonly unknown[] {
  return [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
}

function describe(operation: Operation): Record<string, unknown> {
  const { id, summary, deed, parameters = [], path, body, success } = operation;
  const scope = deed === null ? undefined : scopeOfDeed[deed];
  return {
    operationId: id,
    summary,
    ...(scope ? { description: `Scope: ${scope} (${scopeNames[scope].toLowerCase()}).` } : {}),
    // OpenAPI 3.1: scopes may stand at any scheme, not only at OAuth 2.
    security: scope ? [{ [TOKEN]: [scope] }] : [],
    parameters: [...pathParameters(path), ...parameters],
    ...(body ? { requestBody: { required: true, content: content(body) } } : {}),
    responses: {
      [String(success.status)]: {
        description: "Done.",
        ...(success.body ? { content: content(success.body) } : {}),
      },
      ...refusals(operation),
    },
  };
}

/** The HTTP API as an OpenAPI 3.1 document, made from the schemas the routes parse with. */
export function openApiDocument(): Record<string, unknown> {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const operation of operations) (paths[operation.path] ??= {})[operation.method] = describe(operation);
  return {
    openapi: "3.1.1",
    jsonSchemaDialect: "https://json-schema.org/draft/2020-12/schema",
    info: {
      title: "Toeline",
      version: "1",
      description:
        "Beads, photos, sizes, causes, verdicts, exports, imports and trends of one installation. Without accounts the server listens on this machine only and asks for no token.",
    },
    servers: [{ url: "/" }],
    paths,
    components: {
      schemas: componentSchemas(),
      securitySchemes: {
        [TOKEN]: {
          type: "http",
          scheme: "bearer",
          description:
            "A token made on the page Tokens; it reaches no further than its person and its scopes.",
        },
      },
    },
  };
}
