// The order of the rooms, and every rule that follows from it.
// A room may import the rooms before it in this list; rooms on one line stand side by side and may not import each other.

const order = [
  ["units"],
  ["geometry"],
  ["text"],
  ["findings"],
  ["project"],
  ["catalogue"],
  ["equations"],
  ["codes"],
  ["setout"],
  ["proof", "cutting"],
  ["takeoff"],
  ["site"],
  ["scene"],
  ["output"],
  ["design"],
  ["store"],
  ["server"],
  ["cli"],
];

/** Rooms that need less than the order would give them: the last room each may reach. */
const reachesOnly = { store: "project", web: "design" };

/** Libraries kept behind one room, so that each can be replaced there. */
const librariesOfRooms = {
  geometry: ["clipper-lib"],
  store: ["better-sqlite3", "kysely"],
  server: ["hono", "@hono/node-server", "node-forge"],
  cli: ["commander"],
  web: ["react", "react-dom", "three", "@fontsource/atkinson-hyperlegible-next"],
};

const lastOfCore = "design";

/** @param {string} room */
const levelOf = (room) => order.findIndex((level) => level.includes(room));

/** @param {string[]} rooms */
const pathOf = (rooms) => `^src/(${rooms.join("|")})(/|[.]ts$)`;

/** @param {string} room */
function mayImport(room) {
  const last = /** @type {Record<string, string>} */ (reachesOnly)[room];
  const below = last === undefined ? order.slice(0, levelOf(room)) : order.slice(0, levelOf(last) + 1);
  return [room, ...below.flat()];
}

const core = order.slice(0, levelOf(lastOfCore) + 1).flat();
const rooms = [...order.flat(), "web"];

const rulesOfRooms = rooms.map((room) => ({
  name: `room-${room}`,
  comment: `src/${room} may import ${mayImport(room).slice(1).join(", ") || "no other room"}.`,
  severity: "error",
  from: { path: pathOf([room]) },
  to: { path: "^src/", pathNot: pathOf(mayImport(room)) },
}));

const rulesOfLibraries = Object.entries(librariesOfRooms).map(([room, libraries]) => ({
  name: `library-of-${room}`,
  comment: `${libraries.join(", ")}: only src/${room} may use it.`,
  severity: "error",
  from: { path: "^src/", pathNot: pathOf([room]) },
  to: { path: `(^|/)node_modules/(@types/)?(${libraries.join("|")})/` },
}));

/** @type {import("dependency-cruiser").IConfiguration} */
module.exports = {
  forbidden: [
    ...rulesOfRooms,
    ...rulesOfLibraries,
    {
      name: "known-room",
      comment: "Every source file lives in a room of the ordered list.",
      severity: "error",
      from: { path: "^src/", pathNot: pathOf(rooms) },
      to: {},
    },
    {
      name: "core-without-node",
      comment: "The core runs in a browser worker as well as in Node: none of Node's own modules.",
      severity: "error",
      from: { path: pathOf([...core, "web"]) },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "no-circular",
      comment: "A ring of files cannot be read, tested or moved one at a time.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "src-stands-alone",
      comment: "The program must not lean on its tests, benches or scripts.",
      severity: "error",
      from: { path: "^src/" },
      to: { path: "^(test|bench|scripts|bin)/" },
    },
    {
      name: "declared-library",
      comment: "A library used by the program is one of its declared dependencies.",
      severity: "error",
      from: { path: "^src/" },
      to: { dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown"], pathNot: "/node_modules/@types/" },
    },
    {
      name: "resolvable",
      comment: "An import that leads nowhere.",
      severity: "error",
      from: { path: "^src/" },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      extensions: [".ts", ".tsx", ".mjs", ".js", ".json", ".css"],
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
    },
  },
};
