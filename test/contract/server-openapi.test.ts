/** The description of the programs' interface, the routes that there are, and what they answer, agree. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { apiDescriptionFile } from "../../scripts/docs-openapi.ts";
import { OPERATIONS } from "../../src/server/api/operations.ts";
import { createApp } from "../../src/server/app.ts";
import { diskFiles } from "../../src/server/files.ts";
import { checkout } from "../helpers/cli.ts";
import { type Guarded, guardedServer } from "../helpers/guarded.ts";
import { told } from "../helpers/journal.ts";
import { describeWithStore, ID } from "../helpers/store.ts";

interface Described {
  readonly components: object;
  readonly paths: Record<string, Record<string, { responses: Record<string, { content?: object }> }>>;
}

const published = JSON.parse(readFileSync(join(checkout, "docs/openapi.json"), "utf8")) as Described;

describe("docs/openapi.json", () => {
  it("is what `npm run docs` makes", () => {
    expect(published).toEqual(JSON.parse(apiDescriptionFile()));
  });

  it("names every operation once", () => {
    const names = OPERATIONS.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});

let server: Guarded;
beforeEach(async () => {
  server = await guardedServer();
});
afterEach(() => server.place.clear());

describeWithStore("the routes", () => {
  it("are those that are described, with their methods, and no others", async () => {
    const store = await server.place.open();
    const app = createApp({
      files: diskFiles,
      projectFile: "",
      documentsDir: "",
      webDir: "",
      store,
      guarded: { hosts: [] },
    });
    const routed = app.routes
      .filter(({ method, path }) => method !== "ALL" && path !== "/*" && path !== "*")
      .map(
        ({ method, path }) =>
          `${method} ${path.replace(/:(\w+)(\{[^/]*\})?/g, "{$1}").replace(/(.)\/$/, "$1")}`,
      )
      .filter((one) => / \/(api|documents)\b/.test(one));
    const described = OPERATIONS.map(({ method, path }) => `${method.toUpperCase()} ${path}`);
    expect([...new Set(routed)].sort()).toEqual(described.sort());
  });

  it("answer in the described shapes", async () => {
    const cookie = await server.signIn("Ada", "office");
    const document: unknown = JSON.parse(readFileSync(`${checkout}examples/porch.outerleaf.json`, "utf8"));
    await server.ask({
      method: "PUT",
      path: `/api/projects/${ID}`,
      cookie,
      headers: { "if-none-match": "*" },
      body: { name: "porch", document, says: { key: "page.edit.read", values: {} } },
    });
    const entries = [told(1), told(2, { body: { stage: "painted" } })];
    const journal = `/api/projects/${ID}/journal`;
    const invited = { name: "Ben", role: "site" };
    const asked = [
      ["post", "/api/projects/{id}/journal", { method: "POST", path: journal, body: { entries } }],
      ["get", "/api/projects/{id}/journal", { path: `${journal}?after=0` }],
      ["get", "/api/projects/{id}/site", { path: `/api/projects/${ID}/site` }],
      ["get", "/api/projects/{id}/issued", { path: `/api/projects/${ID}/issued` }],
      ["get", "/api/projects/{id}", { path: `/api/projects/${ID}` }],
      ["get", "/api/projects/{id}/revisions", { path: `/api/projects/${ID}/revisions` }],
      ["get", "/api/projects/{id}/revisions/{number}", { path: `/api/projects/${ID}/revisions/1` }],
      ["get", "/api/projects", { path: "/api/projects" }],
      ["get", "/api/project", { path: "/api/project" }],
      ["get", "/api/documents", { path: "/api/documents" }],
      ["get", "/api/me", { path: "/api/me" }],
      ["post", "/api/people", { method: "POST", path: "/api/people", body: invited }],
      ["get", "/api/people", { path: "/api/people" }],
      ["get", "/api/sessions", { path: "/api/sessions" }],
      ["get", "/api/audit", { path: "/api/audit" }],
    ] as const;
    const ajv = new Ajv2020({ strict: false, formats: { "date-time": true, uri: true } });
    for (const [method, path, request] of asked) {
      const answer = await server.ask({ ...request, cookie });
      const { content } = published.paths[path]?.[method]?.responses[answer.status] ?? {};
      const { schema } = (content as { "application/json"?: { schema: object } })?.["application/json"] ?? {};
      const { components } = published;
      const validate = ajv.compile(schema ? { ...schema, components } : false);
      validate(await answer.json());
      expect({ path, errors: validate.errors ?? [] }).toEqual({ path, errors: [] });
    }
  });
});
