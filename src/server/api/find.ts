/** Which operation a request asks for. */
import { OPERATIONS, type Operation } from "./operations.ts";

const known = OPERATIONS.map((operation) => ({
  operation,
  pattern: new RegExp(`^${operation.path.replaceAll(".", "[.]").replace(/\{\w+\}/g, "[^/]+")}$`),
}));

/** Undefined for an address or a method of which nothing is known. HEAD asks for what GET asks for. */
export function operationAt(method: string, path: string): Operation | undefined {
  const asked = method === "HEAD" ? "get" : method.toLowerCase();
  return known.find(({ operation, pattern }) => operation.method === asked && pattern.test(path))?.operation;
}
