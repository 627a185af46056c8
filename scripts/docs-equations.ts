/** Makes the pages of `docs/equations` from the equations: formula, inputs with unit and range, result, source, tests. */
import { readdirSync, readFileSync } from "node:fs";
import { AIR_EQUATIONS } from "../src/equations/air/index.ts";
import { BEAMS_EQUATIONS } from "../src/equations/beams/index.ts";
import { CAVITY_EQUATIONS } from "../src/equations/cavity/index.ts";
import { DURABILITY_EQUATIONS } from "../src/equations/durability/index.ts";
import type { Equation } from "../src/equations/equation.ts";
import { HANGING_EQUATIONS } from "../src/equations/hanging/index.ts";
import { HEAT_EQUATIONS } from "../src/equations/heat/index.ts";
import { EQUATIONS } from "../src/equations/index.ts";
import { LIGHT_EQUATIONS } from "../src/equations/light/index.ts";
import { RAIN_EQUATIONS } from "../src/equations/rain/index.ts";
import { SCREWS_EQUATIONS } from "../src/equations/screws/index.ts";
import { WIND_EQUATIONS } from "../src/equations/wind/index.ts";

const root = new URL("../", import.meta.url);

interface Page {
  readonly file: string;
  readonly title: string;
  readonly equations: readonly Equation[];
}

const OF_FOLDERS: readonly Page[] = [
  { file: "light", title: "Sun and light", equations: LIGHT_EQUATIONS },
  { file: "air", title: "Moist air", equations: AIR_EQUATIONS },
  { file: "cavity", title: "Air through the cavity", equations: CAVITY_EQUATIONS },
  { file: "rain", title: "Driven rain", equations: RAIN_EQUATIONS },
  { file: "heat", title: "Heat loss", equations: HEAT_EQUATIONS },
  { file: "durability", title: "Durability and mass", equations: DURABILITY_EQUATIONS },
  { file: "wind", title: "Wind on walls", equations: WIND_EQUATIONS },
  { file: "beams", title: "Bending", equations: BEAMS_EQUATIONS },
  { file: "screws", title: "Screws", equations: SCREWS_EQUATIONS },
  { file: "hanging", title: "Hanging through insulation", equations: HANGING_EQUATIONS },
];

/** Each equation stands on one page; those of no folder are about movement and openings. */
function pages(): Page[] {
  const others = EQUATIONS.filter((one) => !OF_FOLDERS.some(({ equations }) => equations.includes(one)));
  return [
    { file: "movement", title: "Movement, joints and openings", equations: others },
    ...OF_FOLDERS.map((page) => ({
      ...page,
      equations: page.equations.filter((one) => EQUATIONS.includes(one)),
    })),
  ];
}

interface SourceText {
  readonly path: string;
  readonly text: string;
}

function textsIn(folder: string): SourceText[] {
  return readdirSync(new URL(folder, root), { recursive: true, encoding: "utf8" })
    .map((name) => name.replaceAll("\\", "/"))
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .map((name) => ({
      path: `${folder}${name}`,
      text: readFileSync(new URL(`${folder}${name}`, root), "utf8"),
    }));
}

/** The file that makes an equation's record. */
function home(equation: Equation, sources: readonly SourceText[]): SourceText {
  const found = sources.find(({ text }) => text.includes(`"${equation.name}"`));
  if (!found) throw new Error(`no file under src/equations makes ${equation.name}`);
  return found;
}

/** What the file says of itself, on one line. */
function about({ text }: SourceText): string {
  const comment = /^\/\*\*([\s\S]*?)\*\//.exec(text)?.[1] ?? "";
  return comment
    .split("\n")
    .map((line) => line.replace(/^\s*\*?\s?/, "").trim())
    .join(" ")
    .trim();
}

/** The checks that import the file or ask for the record by its name: published ones where there are any, else our own. */
function checks({ name }: Equation, { path }: SourceText, tests: readonly SourceText[]): string {
  const asking = tests.filter(({ text }) => text.includes(`/${path}"`) || text.includes(`"${name}"`));
  const published = asking.filter((test) => test.path.startsWith("test/published/"));
  const shown = (published.length > 0 ? published : asking).map((test) => `\`${test.path}\``);
  return shown.length > 0 ? shown.join(", ") : "by swapping its inputs alone";
}

function unitText(unit: string): string {
  return unit === "1" ? "–" : unit;
}

function section(equation: Equation, sources: readonly SourceText[], tests: readonly SourceText[]): string[] {
  const { name, formula, inputs, together, result, source } = equation;
  const file = home(equation, sources);
  return [
    `## ${name}`,
    "",
    about(file),
    "",
    "```text",
    `${formula}`,
    "```",
    "",
    "| Input | Unit | From | To |",
    "| --- | --- | --- | --- |",
    ...inputs.map(
      ({ key, unit, range: [least, most] }) => `| \`${key}\` | ${unitText(unit)} | ${least} | ${most} |`,
    ),
    "",
    ...(together ? [`Together: \`${together.condition}\``, ""] : []),
    `- Result: ${result.unit === "1" ? "a number without unit" : result.unit}`,
    `- Source: ${[source.document, source.clause].filter((part) => part !== undefined).join(", ")}`,
    `- Code: \`${file.path}\``,
    `- Checked: ${checks(equation, file, tests)}`,
    "",
  ];
}

/** Tests, but the one that swaps the inputs of all. */
function isCheck({ path }: SourceText): boolean {
  return path.endsWith(".test.ts") && path !== SWAPS;
}

const SWAPS = "test/unit/equations.test.ts";

const MADE = "Made from `src/equations` by `scripts/docs-equations.ts`; do not edit by hand.";

/** The pages by their names in `docs/equations`, each ending in a newline. The same code gives the same bytes. */
export function equationPages(): Record<string, string> {
  const sources = textsIn("src/equations/");
  const tests = textsIn("test/").filter(isCheck);
  const all = pages();
  const index = [
    "# Equations",
    "",
    MADE,
    "",
    "Each is worked by name with `outerleaf reckon NAME key=value …`. Outside the range of an input it cannot be evaluated.",
    `Every pair of inputs of one unit is swapped in \`${SWAPS}\`, and the result must change, save where a sum treats both alike.`,
    "",
    ...all.flatMap(({ file, title, equations }) => [
      `- [${title}](${file}.md): ${equations.map(({ name }) => `[${name}](${file}.md#${name})`).join(", ")}`,
    ]),
  ];
  return {
    "README.md": `${index.join("\n")}\n`,
    ...Object.fromEntries(
      all.map(({ file, title, equations }) => {
        const lines = [
          `# ${title}`,
          "",
          MADE,
          "",
          ...equations.flatMap((one) => section(one, sources, tests)),
        ];
        return [`${file}.md`, `${lines.join("\n").trimEnd()}\n`];
      }),
    ),
  };
}
