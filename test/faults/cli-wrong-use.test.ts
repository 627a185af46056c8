/** Wrong use of the command line: exit code 2, a sentence that names what is wrong and how to mend it, nothing on standard output. */
import { afterAll, describe, expect, it } from "vitest";
import { bench } from "../helpers/cli.ts";

const desk = bench();
afterAll(() => desk.clear());

const DEMO = "atelier-bouleau.outerleaf.json";
const list = { sheets: [[1220, 2440]], items: [[600, 800, 2]] };
desk.write("broken.json", '{ "schemaVersion": 1, ');
desk.write("other.json", { name: "a package", version: "1.0.0" });
desk.write("list.json", list);
desk.write("bad-list.json", { ...list, kerf: "three" });
desk.write("patch.json", [{ op: "replace", path: "/title", value: "Another" }]);
desk.write("patch-broken.json", "[{");
desk.write("patch-object.json", { op: "replace" });
desk.write("patch-nowhere.json", [{ op: "replace", path: "/faces/99/id", value: "x" }]);
desk.write("patch-spoils.json", [{ op: "replace", path: "/faces/0/outline", value: "wide" }]);
desk.write("here.json", "{}");

const WRONG: readonly (readonly [what: string, argv: readonly string[], says: readonly string[]])[] = [
  ["no command", [], ["No command was given.", "outerleaf --help"]],
  ["a mistyped command", ["chek", DEMO], ['no command "chek"', "check is probably meant"]],
  ["a command far from any", ["paint", DEMO], ['no command "paint"', "new, check, take-in, planes, set-out"]],
  ["no file", ["check"], ["check lacks its FILE", "outerleaf check house.outerleaf.json"]],
  [
    "two files",
    ["check", DEMO, "imperial.outerleaf.json"],
    ['"imperial.outerleaf.json"', "One file a command"],
  ],
  ["an empty file name", ["check", ""], ["check: FILE is empty"]],
  ["a mistyped option", ["check", DEMO, "--jsn"], ["no option --jsn", "--json is probably meant"]],
  ["an option of another command", ["check", DEMO, "--turn"], ["no option --turn", "outerleaf check --help"]],
  [
    "an option before the command",
    ["--units", "mm", "check", DEMO],
    ["no option --units", "after the command"],
  ],
  ["an option without its value", ["issue", DEMO, "--to"], ["--to DIR lacks its value"]],
  ["a missing option", ["issue", DEMO], ["--to DIR must be given"]],
  [
    "an unknown language",
    ["check", DEMO, "--language", "de"],
    ["--language en|fr", '"de" is none of en, fr'],
  ],
  ["unknown units", ["check", DEMO, "--units", "cm"], ['"cm" is none of mm, feet-inch']],
  ["a port that is a word", ["serve", DEMO, "--port", "http"], ['--port N: "http"', "0 to 65535"]],
  ["a port too high", ["serve", DEMO, "--port", "70000"], ['"70000"', "0 to 65535"]],
  ["half a stage", ["saw", "list.json", "--stages", "1.5"], ['--stages N: "1.5"', "1 to 20"]],
  ["a negative budget", ["saw", "list.json", "--budget", "-1"], ['--budget N: "-1"']],
  ["a missing file", ["set-out", "nowhere.json"], ["nowhere.json cannot be read: there is no such file"]],
  ["a folder for a file", ["prove", "."], [". cannot be read: it is a folder"]],
  ["a file below a file", ["cut", `${DEMO}/more.json`], ["a part of its path is no folder"]],
  ["a file that is not JSON", ["takeoff", "broken.json"], ["broken.json cannot be used", "F001"]],
  [
    "JSON of another kind",
    ["check", "other.json"],
    ["other.json cannot be used", "F002", "outerleaf new FILE"],
  ],
  ["a missing patch", ["check", DEMO, "--edit", "none.json"], ["none.json cannot be read"]],
  [
    "a patch that is not JSON",
    ["prove", DEMO, "--edit", "patch-broken.json"],
    ["not JSON: see line 1, column 3"],
  ],
  ["a patch that is no list", ["prove", DEMO, "--edit", "patch-object.json"], ["cannot be applied", "F021"]],
  [
    "a patch that leads nowhere",
    ["cut", DEMO, "--edit", "patch-nowhere.json"],
    ["patch-nowhere.json cannot be applied; nothing was done", "/faces/99/id"],
  ],
  [
    "a patch that spoils the file",
    ["issue", DEMO, "--to", "spoilt", "--edit", "patch-spoils.json"],
    ["cannot be used", "/faces/0/outline"],
  ],
  ["a new file over an old one", ["new", "here.json"], ["here.json was not written: there is one already"]],
  ["a new file in no folder", ["new", "no/such/wall.json"], ["no/such/wall.json was not written"]],
  [
    "a new project spoilt by its edit",
    ["new", "wall.json", "--edit", "patch-spoils.json"],
    ["nothing was written"],
  ],
  ["an unknown equation", ["reckon", "net-vent-aera"], ["no equation", "net-vent-area is probably meant"]],
  [
    "an input without its number",
    ["reckon", "hole-size", "shankMm"],
    ['"shankMm" is not written as key=value'],
  ],
  [
    "a mistyped input",
    ["reckon", "hole-size", "shankmm=5"],
    ['no input "shankmm"', "shankMm is probably meant"],
  ],
  ["an input that is a word", ["reckon", "hole-size", "shankMm=five"], ['shankMm: "five" is no number']],
  ["an input twice", ["reckon", "hole-size", "shankMm=5", "shankMm=6"], ["shankMm is given twice"]],
  [
    "inputs missing",
    ["reckon", "woven-free-share", "wireMm=1"],
    ["lacks openingMm", "openingMm [mm], wireMm [mm]"],
  ],
  [
    "a way to nowhere",
    ["reach", DEMO],
    ["Neither a piece nor a place", "--mark MARK, or --face ID and --at X,Y"],
  ],
  [
    "a way to a piece and a place at once",
    ["reach", DEMO, "--mark", "F2-S1a", "--face", "front", "--at", "1,2"],
    ["Beside --mark", "nothing is made of --face, --at"],
  ],
  [
    "a depth of a piece",
    ["reach", DEMO, "--mark", "F2-S1a", "--depth", "batten"],
    ["nothing is made of --depth"],
  ],
  ["a place without its face", ["reach", DEMO, "--at", "1,2"], ["--at lacks --face"]],
  ["a face without its place", ["reach", DEMO, "--face", "front"], ["--face lacks --at", "--at X,Y"]],
  [
    "a depth that is none",
    ["reach", DEMO, "--face", "front", "--at", "1,2", "--depth", "stud"],
    ['"stud" is none of membrane, batten'],
  ],
  [
    "a mistyped mark",
    ["reach", DEMO, "--mark", "F2-S1A"],
    ["No piece is marked F2-S1A", "F2-S1a is probably meant"],
  ],
  [
    "a mark far from any",
    ["reach", DEMO, "--mark", "the sheet by the door"],
    ["No piece is marked the sheet by the door", "set-out FILE --json lists every mark"],
  ],
  [
    "a mistyped face",
    ["reach", DEMO, "--face", "fornt", "--at", "1,2"],
    ["no face fornt", "front is probably meant"],
  ],
  [
    "a face far from any",
    ["reach", DEMO, "--face", "chimney", "--at", "1,2"],
    ["no face chimney", "The faces are west, front"],
  ],
  ["one length for a place", ["reach", DEMO, "--face", "front", "--at", "2700"], ['"2700" is no place X,Y']],
  [
    "three lengths for a place",
    ["reach", DEMO, "--face", "front", "--at", "2700,5,400"],
    ['"2700,5,400" is no place X,Y', "part them by a semicolon"],
  ],
  [
    "a place in words",
    ["reach", DEMO, "--face", "front", "--at", "left,low"],
    ['"left,low" is no place X,Y'],
  ],
  [
    "a place in the door",
    ["reach", DEMO, "--face", "front", "--at", "4800,1000"],
    ["4800 mm, 1000 mm on face front", "in the opening D1", "from −50 mm to 3010 mm up"],
  ],
  [
    "a place off the wall",
    ["reach", DEMO, "--face", "front", "--at", "9.5 m,1 m"],
    ["No cladding lies at 9500 mm, 1000 mm on face front", "to 7223 mm across"],
  ],
  ["a list with a fault", ["saw", "bad-list.json"], ["bad-list.json, /kerf", '"three"']],
  ["a list that is not JSON", ["saw", "broken.json"], ["broken.json is not JSON: see line 1"]],
  ["an edit where no file is read", ["reckon", "--edit", "patch.json"], ["no option --edit"]],
];

describe("wrong use", () => {
  it.each(WRONG)("%s", async (_, argv, says) => {
    const before = desk.names();
    const { exit, out, err } = await desk.run(...argv);
    expect(exit).toBe(2);
    const told = out + err;
    for (const part of says) expect(told).toContain(part);
    // `check` answers about the file on standard output, whatever it finds; everything else prints results alone there.
    if (argv[0] !== "check" || !argv[1]?.endsWith("other.json")) expect(out).toBe("");
    expect(told).not.toMatch(/\n\s+at |undefined|\[object|\[cli\.|NaN/);
    expect(desk.names()).toEqual(before);
  });

  it("is told in French where that is asked for, as JSON where that is asked for", async () => {
    const french = await desk.run("chek", DEMO, "--language", "fr");
    expect(french.err).toContain("Il n’y a pas de commande « chek »");
    const both = await desk.run("issue", DEMO, "--language=fr", "--json");
    expect(both.exit).toBe(2);
    expect(JSON.parse(both.out)).toMatchObject({ refused: "--to DIR doit être donné.", findings: [] });
  });
});
