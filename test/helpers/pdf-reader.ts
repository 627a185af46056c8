/**
 * Reads the pages of a PDF back from their uncompressed contents by ISO 32000-1, apart from the code that writes it: paths and texts where
 * they end up on the page, in millimetres from its upper left corner.
 */
import type { ReadBack } from "../contract/scene-renderer-suite.ts";

type Matrix = readonly [number, number, number, number, number, number];

const MM = 25.4 / 72;
const PAINTS = new Set(["S", "s", "f", "F", "f*", "B", "B*", "b", "b*"]);

/** 8.3.4: what a point of the inner system is in the outer one. */
function times([a, b, c, d, e, f]: Matrix, [p, q, r, s, t, u]: Matrix): Matrix {
  return [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u];
}

/** 9.10.3: glyphs to signs, of each font by its name on the page. */
function fontsOf(file: string): ReadonlyMap<string, ReadonlyMap<number, string>> {
  const objects = new Map(
    [...file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id = "", body = ""]) => [
      id,
      body,
    ]),
  );
  const fonts = new Map<string, ReadonlyMap<number, string>>();
  for (const [, list = ""] of file.matchAll(/\/Font <<\n([\s\S]*?)>>/g)) {
    for (const [, name = "", id = ""] of list.matchAll(/\/(\w+) (\d+) 0 R/g)) {
      const toUnicode = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? "")?.[1] ?? "";
      const signs = new Map<number, string>();
      const ranges = (objects.get(toUnicode) ?? "").matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/g);
      for (const [, first = "", codes = ""] of ranges)
        [...codes.matchAll(/<([0-9a-f]*)>/g)].forEach(([, code = ""], i) => {
          const units = code.match(/.{4}/g) ?? [];
          signs.set(
            Number.parseInt(first, 16) + i,
            units.map((unit) => String.fromCharCode(Number.parseInt(unit, 16))).join(""),
          );
        });
      fonts.set(name, signs);
    }
  }
  return fonts;
}

export function readPdfPage(bytes: Uint8Array): ReadBack {
  const [first] = readPdfPages(bytes);
  if (!first) throw new Error("the PDF has no page");
  return first;
}

/** Every page, in order of the page tree (7.7.3). */
export function readPdfPages(bytes: Uint8Array): ReadBack[] {
  const file = Buffer.from(bytes).toString("latin1");
  const objects = new Map(
    [...file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id = "", body = ""]) => [
      id,
      body,
    ]),
  );
  const tree = [...objects.values()].find((body) => /\/Type \/Pages\b/.test(body)) ?? "";
  const kids = /\/Kids \[([^\]]*)\]/.exec(tree)?.[1] ?? "";
  const fonts = fontsOf(file);
  return [...kids.matchAll(/(\d+) 0 R/g)].map(([, id = ""]) => {
    const page = objects.get(id) ?? "";
    const [width = 0, height = 0] = (/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page) ?? [])
      .slice(1)
      .map(Number);
    const content = objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? "") ?? "";
    const stream = /stream\n([\s\S]*?)\nendstream/.exec(content)?.[1] ?? "";
    return readContent(stream, { width, height, fonts });
  });
}

function readContent(
  stream: string,
  {
    width,
    height,
    fonts,
  }: { width: number; height: number; fonts: ReadonlyMap<string, ReadonlyMap<number, string>> },
): ReadBack {
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  const saved: Matrix[] = [];
  const points: [number, number][] = [];
  const texts: ReadBack["texts"][number][] = [];
  let [marks, font, at]: [number, string, Matrix] = [0, "", matrix];
  const put = (x: number, y: number): void => {
    const [, , , , e, f] = times([1, 0, 0, 1, x, y], matrix);
    points.push([e * MM, (height - f) * MM]);
  };
  let given: string[] = [];
  for (const [token] of stream.matchAll(/\[[^\]]*\]|[^\s[\]]+/g)) {
    if (/^[-.\d[/]/.test(token)) {
      given.push(token);
      continue;
    }
    const numbers = given.map(Number);
    if (token === "q") saved.push(matrix);
    else if (token === "Q") matrix = saved.pop() ?? matrix;
    else if (token === "cm") matrix = times(numbers as unknown as Matrix, matrix);
    else if (token === "m" || token === "l") put(numbers[0] as number, numbers[1] as number);
    else if (token === "c") put(numbers[4] as number, numbers[5] as number);
    else if (PAINTS.has(token)) marks += 1;
    else if (token === "Tm") at = times(numbers as unknown as Matrix, matrix);
    else if (token === "Tf") font = (given[0] ?? "").slice(1);
    else if (token === "TJ") {
      const signs = fonts.get(font);
      const text = [...(given[0] ?? "").matchAll(/<([0-9a-f]*)>/g)]
        .flatMap(([, hex = ""]) => hex.match(/.{4}/g) ?? [])
        .map((glyph) => signs?.get(Number.parseInt(glyph, 16)) ?? "\uFFFD")
        .join("");
      const [a, , , , e, f] = at;
      texts.push({ text, x: e * MM, y: (height - f) * MM, anchor: "start", turned: Math.abs(a) < 1e-6 });
      marks += 1;
    }
    given = [];
  }
  return { width: width * MM, height: height * MM, marks, points, texts };
}
