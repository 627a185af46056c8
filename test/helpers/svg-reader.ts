/** Reads our SVG back, apart from the code that writes it: a strict tag walker and the positions in it. */

export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: string;
  readonly turned: boolean;
  readonly fontSize: number;
}

export interface ReadDrawing {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly ReadText[];
  readonly points: readonly (readonly [number, number])[];
  /** Painted elements: paths, circles, texts. */
  readonly marks: number;
  readonly of: ReadonlySet<string>;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

function unescapeXml(text: string): string {
  return text.replace(/&([#\w]+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}

/** Throws on markup that is not well formed: a test's failure, never a user's. */
export function readSvg(svg: string): ReadDrawing {
  const open: string[] = [];
  const texts: ReadText[] = [];
  const points: [number, number][] = [];
  const of = new Set<string>();
  let marks = 0;
  let [width, height] = [0, 0];
  let last = 0;
  let text: Omit<ReadText, "text"> | undefined;
  for (const match of svg.matchAll(/<(\/?)(\w+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g)) {
    const between = svg.slice(last, match.index);
    if (open.at(-1) !== "style" && /[<]/.test(between)) throw new Error(`stray < before ${match[0]}`);
    if (/&(?![#\w]+;)/.test(between)) throw new Error(`bare & before ${match[0]}`);
    last = match.index + match[0].length;
    const [, closing, name = "", rest = "", empty] = match;
    const attributes = new Map(
      [...rest.matchAll(/([\w:-]+)="([^"]*)"/g)].map((pair) => [
        pair[1] as string,
        unescapeXml(pair[2] as string),
      ]),
    );
    const figure = (key: string): number => Number(attributes.get(key) ?? Number.NaN);
    if (closing) {
      if (open.pop() !== name) throw new Error(`</${name}> closes nothing`);
      if (name === "text" && text) texts.push({ ...text, text: unescapeXml(between) });
      continue;
    }
    if (!empty) open.push(name);
    const owner = attributes.get("data-of");
    if (owner !== undefined) of.add(owner);
    if (name === "svg")
      [width, height] = (attributes.get("viewBox") ?? "").split(" ").slice(2).map(Number) as [number, number];
    if (name === "text") {
      marks++;
      text = {
        x: figure("x"),
        y: figure("y"),
        anchor: attributes.get("text-anchor") ?? "start",
        turned: attributes.has("transform"),
        fontSize: figure("font-size"),
      };
    }
    if (name === "circle") {
      marks++;
      const [x, y, r] = [figure("cx"), figure("cy"), figure("r")];
      points.push([x - r, y - r], [x + r, y + r]);
    }
    if (name === "path") {
      marks++;
      const data = (attributes.get("d") ?? "").replace(/A\S+ \S+ \S+ \S+ \S+ /g, "L");
      for (const pair of data.matchAll(/(-?[\d.]+) (-?[\d.]+)/g))
        points.push([Number(pair[1]), Number(pair[2])]);
    }
  }
  if (open.length > 0) throw new Error(`not closed: ${open.join(", ")}`);
  return { width, height, texts, points, marks, of };
}
