import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { notices } from "../../scripts/notices.mjs";
import { checkout } from "./planted-tree.ts";

describe("THIRD-PARTY-NOTICES.md", () => {
  it("is what `npm run notices` makes of the libraries in use", () => {
    expect(readFileSync(join(checkout, "THIRD-PARTY-NOTICES.md"), "utf8")).toBe(notices());
  });

  it("gives the typeface's and the polygon library's licences in full", () => {
    const page = notices();
    expect(page).toContain("SIL OPEN FONT LICENSE Version 1.1");
    expect(page).toContain("Boost Software License - Version 1.0");
  });
});
