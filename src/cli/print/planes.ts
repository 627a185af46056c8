/** A plane search as text: what passes in a table, best first, then what nearly does, each broken rule in its words. */
import type { PlaneCombination, PlaneSearchResult, RuleSaid } from "../../setout/plane-search/index.ts";
import { message } from "../../text/message.ts";
import { type Reader, say, sayLength } from "../../text/say.ts";
import { table } from "./table.ts";

const PASSING = 8;
const FAILING = 6;

export function printPlanes(search: PlaneSearchResult, reader: Reader): string {
  const { zones, followers, counts, passing, failing, nearest } = search;
  const tell = (key: string, values = {}): string => say(message(`cli.planes.${key}`, values), reader);
  const places = (refs: typeof zones): string => refs.map(({ face, zone }) => `${face} / ${zone}`).join(", ");
  const [first] = passing;
  const more = (count: number): string[] => (count > 0 ? [tell("more", { count })] : []);
  return [
    tell("zones", { zones: places(zones) }),
    ...(followers.length > 0 ? [tell("followers", { zones: places(followers) })] : []),
    say(message("planes.counts", { ...counts }), reader),
    ...(first ? ["", passingTable(passing.slice(0, PASSING), reader)] : ["", tell("none")]),
    ...more(counts.passing - Math.min(passing.length, PASSING)),
    ...(nearest ? [tell("nearest"), ...brokenLines(nearest, reader)] : []),
    ...(first && first.attention.length > 0 ? ["", tell("look"), ...ruleLines(first.attention, reader)] : []),
    ...(failing.length > 0 ? ["", tell("failing", { count: counts.failingOne })] : []),
    ...failing.slice(0, FAILING).flatMap((one) => brokenLines(one, reader)),
    ...more(counts.failing - Math.min(failing.length, FAILING)),
    "",
  ].join("\n");
}

function passingTable(combinations: readonly PlaneCombination[], reader: Reader): string {
  const [first] = combinations;
  const word = (key: string): string => say(message(key), reader);
  const head = [
    "",
    ...(first?.buildUps ?? []).map(({ buildUp }) => buildUp),
    ...(first?.claddings ?? []).map(({ cladding }) => cladding),
    word("cli.planes.plane"),
    word("cli.planes.cavity"),
    word("cli.planes.step"),
    "",
  ];
  const rows = combinations.map((one, i) => [
    String(i + 1),
    ...stackCells(one, reader),
    sayLength(one.merit.plane, reader),
    sayLength(Math.min(...one.zones.map(({ cavity }) => cavity)), reader),
    sayLength(one.merit.step, reader),
    one.present ? `${say(one.rank, reader)} (${word("cli.planes.present")})` : say(one.rank, reader),
  ]);
  const last = head.length - 1;
  return table([head, ...rows], { indent: 2, right: [0, last - 3, last - 2, last - 1] });
}

/** `b25x64 + 2 (batten-140)` for each build-up, then thickness and screw of each cladding. */
function stackCells({ buildUps, claddings }: PlaneCombination, reader: Reader): string[] {
  return [
    ...buildUps.map(({ battens, packers, battenScrew, railScrew }) => {
      const parts = [...packers.map((one) => sayLength(one, reader)), ...battens];
      const screws = [battenScrew, railScrew].filter((id) => id !== undefined);
      return `${parts.join(" + ")} (${screws.join(", ")})`;
    }),
    ...claddings.map(({ thickness, screw }) => `${sayLength(thickness, reader)} (${screw})`),
  ];
}

function brokenLines(one: PlaneCombination, reader: Reader): string[] {
  return [`  ■ ${stackCells(one, reader).join(" | ")}`, ...ruleLines(one.failed, reader)];
}

function ruleLines(rules: readonly RuleSaid[], reader: Reader): string[] {
  return rules.map(({ rule, says, zones }) => {
    const at = [...new Set(zones.map(({ face, zone }) => `${face} / ${zone}`))].join(", ");
    const where = at === "" ? "" : ` · ${at}`;
    return `    ${say(message(`planes.rule.${rule}`), reader)}${where}: ${say(says, reader)}`;
  });
}
