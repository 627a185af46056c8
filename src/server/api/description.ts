/** The description of the programs' interface. Source of the form: OpenAPI Specification 3.1.1. */
import * as z from "zod";
import { message } from "../../text/message.ts";
import { say } from "../../text/say.ts";
import "../texts.ts";
import { entryShape } from "../../site/journal/entry.ts";
import { COOKIE } from "../access/door.ts";
import { refusal } from "./answer-shapes.ts";
import { OPERATIONS, type Operation } from "./operations.ts";

const READER = { language: "en", units: "mm", denominator: 16 } as const;

const tell = (key: string): string => say(message(key), READER);

export function apiDescription(version: string): object {
  const paths: Record<string, Record<string, object>> = {};
  for (const operation of OPERATIONS) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: described(operation) };
  }
  return {
    openapi: "3.1.1",
    info: {
      title: "Outerleaf",
      version,
      description: tell("api.what"),
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/" }],
    paths,
    components: {
      schemas: Object.fromEntries(NAMED.map(({ name, shape }) => [name, plain(shape, "output")])),
      securitySchemes: { session: { type: "apiKey", in: "cookie", name: COOKIE } },
    },
  };
}

function described({ path, name, role, query = {}, body, answer, status = [200] }: Operation): object {
  const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, part = ""]) => ({
    name: part,
    in: "path",
    required: true,
    schema: { type: "string" },
  }));
  const inQuery = Object.entries(query).map(([part, shape]) => ({
    name: part,
    in: "query",
    required: false,
    schema: schema(shape, "input"),
  }));
  const content =
    typeof answer === "string"
      ? { [answer]: {} }
      : { "application/json": { schema: schema(answer, "output") } };
  return {
    operationId: name,
    summary: tell(`api.${name}`),
    "x-role": role,
    security: role === "anyone" ? [] : [{ session: [] }],
    ...(inPath.length + inQuery.length > 0 ? { parameters: [...inPath, ...inQuery] } : {}),
    ...(body === undefined ? {} : { requestBody: { required: true, content: sent(body) } }),
    responses: {
      ...Object.fromEntries(status.map((one) => [one, { description: tell(`api.status.${one}`), content }])),
      default: {
        description: tell("api.status.refused"),
        content: { "application/json": { schema: { $ref: "#/components/schemas/Refusal" } } },
      },
    },
  };
}

function sent(body: NonNullable<Operation["body"]>): object {
  if (body === "archive") return { "application/zip": {} };
  if (body !== "bytes") return { "application/json": { schema: schema(body, "input") } };
  return Object.fromEntries(["image/jpeg", "image/png", "image/webp"].map((type) => [type, {}]));
}

/** Shapes that many answers are made of; elsewhere they are named, not written out. */
const NAMED = [
  { name: "Refusal", shape: refusal },
  { name: "SiteEntry", shape: entryShape },
] as const;

function schema(shape: z.ZodType, io: "input" | "output"): object {
  const names = new Map(NAMED.map((one) => [JSON.stringify(plain(one.shape, io)), one.name]));
  return named(plain(shape, io), names) as object;
}

/** The same with each part that is written as a named shape put by its name. */
function named(part: unknown, names: ReadonlyMap<string, string>): unknown {
  if (typeof part !== "object" || part === null) return part;
  if (Array.isArray(part)) return part.map((one) => named(one, names));
  const name = names.get(JSON.stringify(part));
  if (name !== undefined) return { $ref: `#/components/schemas/${name}` };
  return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, named(value, names)]));
}

function plain(shape: z.ZodType, io: "input" | "output"): object {
  const { $schema: _, ...rest } = z.toJSONSchema(shape, { target: "draft-2020-12", io });
  return rest;
}
