import { z } from "zod";
import { ROLES } from "../records/roles.ts";
import { problemDocumentSchema } from "./problemDocument.ts";
import { PROBLEM_KINDS } from "./problemKinds.ts";
import { PASSWORD_HEADER, type Route, type RouteAnswer, type RouteBody } from "./route.ts";

/** Name of the cookie of a session: with the prefix that browsers hold to its terms (RFC 6265bis, 4.1.3.2) where the connection is encrypted. */
export const SESSION_COOKIE = { secure: "__Host-gritwright-session", plain: "gritwright-session" } as const;
/** Name of the cookie by which a device is known again that somebody signed in at. */
export const DEVICE_COOKIE = { secure: "__Host-gritwright-device", plain: "gritwright-device" } as const;

type Json = Readonly<Record<string, unknown>>;

/**
 * The table of routes as an OpenAPI 3.1 document. Its schemas are JSON Schema 2020-12, which zod writes itself.
 *
 * @param version of the program
 */
export function openApi(routes: Readonly<Record<string, Route>>, version: string): Json {
  const paths: Record<string, Record<string, Json>> = {};
  const components = componentsOf(routes);
  for (const [name, route] of Object.entries(routes)) {
    const path = openApiPath(route.path);
    paths[path] = { ...paths[path], [route.method]: operation(name, route, components) };
  }
  return {
    openapi: "3.1.1",
    info: { title: "Gritwright", version, description: "The records and computations of one pro shop." },
    paths,
    components: {
      securitySchemes: {
        session: {
          type: "apiKey",
          in: "cookie",
          name: SESSION_COOKIE.secure,
          description: `The cookie that POST /api/session gives, on plain HTTP on this machine as ${SESSION_COOKIE.plain}. Roles, each with what those before it may: ${ROLES.join(", ")}. A shop without any password asks for none.`,
        },
      },
      schemas: {
        Problem: schemaOf(problemDocumentSchema, "output"),
        ...Object.fromEntries([...components].map(([schema, name]) => [name, writtenOut(schema, "output", components)])),
      },
      responses: {
        Problem: {
          description: `Problem details (RFC 9457). Kinds: ${Object.keys(PROBLEM_KINDS).join(", ")}.`,
          content: { "application/problem+json": { schema: { $ref: "#/components/schemas/Problem" } } },
        },
      },
    },
  };
}

/** `/api/balls/:id` as `/api/balls/{id}`. */
export function openApiPath(path: string): string {
  return path.replace(/:(\w+)/g, "{$1}");
}

/** Schemas that are written out once, each with its name: what a route gives by its id, `getBowler` a `Bowler`. */
type Components = ReadonlyMap<z.core.$ZodType, string>;

function componentsOf(routes: Readonly<Record<string, Route>>): Components {
  const given = Object.entries(routes).flatMap(([name, { answer }]) =>
    name.startsWith("get") && answer.kind === "json" ? [[answer.schema, name.slice("get".length)] as const] : [],
  );
  return new Map(given);
}

function operation(name: string, route: Route, components: Components): Json {
  return {
    operationId: name,
    summary: route.does,
    // OpenAPI 3.1 lets a scheme of any kind name the roles that are needed; an empty list of schemes is for everybody.
    security: route.least === "anybody" ? [] : [{ session: [route.least] }],
    tags: [route.path.split("/")[2]],
    parameters: [...fieldsOf(route.params, "path"), ...fieldsOf(route.query, "query"), ...headersOf(route)],
    ...(route.body === undefined ? {} : { requestBody: { required: true, content: contentOf(route.body) } }),
    responses: { [route.answer.status]: answerOf(route, components), default: { $ref: "#/components/responses/Problem" } },
  };
}

function fieldsOf(fields: z.ZodObject | undefined, place: "path" | "query"): Json[] {
  return Object.entries(fields?.shape ?? {}).map(([name, field]) => ({
    name,
    in: place,
    required: !z.safeParse(field as z.ZodType, undefined).success,
    schema: schemaOf(field as z.ZodType, "input"),
  }));
}

function headersOf({ match, key, again }: Route): Json[] {
  const header = (name: string, required: boolean, description: string): Json => ({
    name,
    in: "header",
    required,
    description,
    schema: { type: "string" },
  });
  return [
    ...(again === true
      ? [header(PASSWORD_HEADER, false, "The own password once more, percent-encoded; where the shop has passwords")]
      : []),
    ...(match === true ? [header("If-Match", true, "The version the change was made on, as its ETag")] : []),
    ...(key === undefined ? [] : [header("Idempotency-Key", key === "required", "1 to 128 letters; the same for every retry")]),
  ];
}

function contentOf(body: RouteBody): Json {
  if (body.kind === "json") return { "application/json": { schema: schemaOf(body.schema, "input") } };
  return Object.fromEntries(body.types.map((type) => [type, {}]));
}

function answerOf({ answer, location, does }: Route, components: Components): Json {
  const headers = location === undefined ? {} : { headers: { Location: { schema: { type: "string" } } } };
  return { description: does, ...headers, ...answerContent(answer, components) };
}

function answerContent(answer: RouteAnswer, components: Components): Json {
  switch (answer.kind) {
    case "none":
      return {};
    case "json":
      return { content: { "application/json": { schema: schemaOf(answer.schema, "output", components) } } };
    case "file":
      return { content: Object.fromEntries(answer.types.map((type) => [type, {}])) };
    case "events":
      return {
        content: {
          "text/event-stream": {
            schema: { type: "string" },
            "x-events": Object.fromEntries(
              Object.entries(answer.events).map(([event, schema]) => [event, schemaOf(schema, "output", components)]),
            ),
          },
        },
      };
  }
}

function schemaOf(schema: z.ZodType, io: "input" | "output", components: Components = new Map()): Json {
  const name = components.get(schema);
  return name === undefined ? writtenOut(schema, io, components) : { $ref: placeOf(name) };
}

/** What zod cannot say in JSON Schema, the outcome of a transformation for instance, is left open rather than guessed. */
function writtenOut(schema: z.core.$ZodType, io: "input" | "output", components: Components): Json {
  const { $schema: _dialect, ...written } = z.toJSONSchema(schema, {
    io,
    unrepresentable: "any",
    override({ zodSchema, jsonSchema }) {
      const name = components.get(zodSchema);
      if (name === undefined || zodSchema === schema) return;
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key as keyof typeof jsonSchema];
      jsonSchema.$ref = placeOf(name);
    },
  });
  return written;
}

function placeOf(name: string): string {
  return `#/components/schemas/${name}`;
}
