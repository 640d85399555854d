// Which way imports may point. `npm test` holds them; type imports count as imports.

/** Each room of the engine, and the rooms to its left that it may import. */
const engineRooms = {
  length: [],
  cards: ["length"],
  cloth: ["length"],
  work: ["length", "cloth"],
  back: ["length", "cloth", "work"],
  units: ["length", "cloth", "work"],
  layout: ["length", "cloth", "work", "back", "units"],
  sewing: ["length", "cloth", "work", "back", "units", "layout"],
  supplies: ["length", "cloth", "work", "back", "units", "layout"],
  plan: ["length", "cloth", "work", "back", "units", "layout", "sewing", "supplies"],
  drawing: ["length", "cloth", "work", "back", "units", "layout", "sewing", "supplies", "plan"],
  advice: ["length", "cloth", "work", "back", "units", "layout", "sewing", "supplies", "plan"],
  choice: ["length", "cloth", "work", "back", "units", "layout", "sewing", "supplies", "plan"],
};

/** The rooms outside the engine, and what each may import beside itself. */
const outerRooms = {
  files: ["engine"],
  // The types of what can be wrong with a file and of what a photo shows; code-shape holds that it is types alone.
  words: ["engine", "files", "photo"],
  // A language other than English, fetched where it is chosen.
  german: ["engine", "files", "photo", "words"],
  store: ["engine", "files", "words"],
  photo: ["engine", "files"],
  booklet: ["engine", "files", "words"],
  cli: ["engine", "files", "words", "photo", "booklet"],
  app: ["engine", "files", "words", "german", "photo", "booklet", "store"],
};

/** Packages a room may use. */
const packages = {
  engine: ["culori"],
  files: ["papaparse", "fflate", "valibot"],
  words: [],
  german: [],
  photo: [],
  booklet: ["pdfkit"],
  store: ["idb", "valibot", "yjs"],
  app: [
    "react",
    "react-dom",
    "react-aria-components",
    "vite",
    "@techstark/opencv-js",
    "libheif-js",
    "pdfkit",
  ],
};

// Tests may use the test runner, Node, and data under test/.
const tests = "\\.(test|typetest)\\.tsx?$";
const anyOf = (names) => `(${names.join("|")})`;

const engineDirection = Object.entries(engineRooms).map(([room, left]) => ({
  name: `engine-${room}-imports-only-rooms-to-its-left`,
  severity: "error",
  from: { path: `^src/engine/${room}/` },
  to: { path: "^src/", pathNot: `^src/engine/${anyOf([room, ...left])}/` },
}));

const outerDirection = Object.entries(outerRooms).map(([room, others]) => ({
  name: `${room}-imports-only-${others.join("-and-")}`,
  severity: "error",
  from: { path: `^src/${room}/` },
  to: { path: "^src/", pathNot: `^src/${anyOf([room, ...others])}/` },
}));

const packagesOfRooms = Object.entries(packages).map(([room, names]) => ({
  name: `${room}-uses-only-its-packages`,
  severity: "error",
  from: { path: `^src/${room}/`, pathNot: tests },
  to: {
    dependencyTypesNot: ["local"],
    ...(names.length > 0 ? { pathNot: `^node_modules/(@types/)?${anyOf(names)}/` } : {}),
  },
}));

export default {
  forbidden: [
    ...engineDirection,
    ...outerDirection,
    ...packagesOfRooms,
    {
      name: "every-room-has-a-rule",
      severity: "error",
      from: {
        path: "^src/",
        pathNot: [
          `^src/engine/${anyOf(Object.keys(engineRooms))}/`,
          `^src/${anyOf(Object.keys(outerRooms))}/`,
        ],
      },
      to: {},
    },
    {
      name: "between-engine-rooms-only-through-index",
      severity: "error",
      from: { path: "^src/engine/([^/]+)/" },
      to: { path: "^src/engine/", pathNot: ["^src/engine/$1/", "^src/engine/[^/]+/index\\.ts$"] },
    },
    {
      name: "into-the-engine-only-through-index",
      severity: "error",
      from: { pathNot: "^src/engine/" },
      to: { path: "^src/engine/", pathNot: "^src/engine/[^/]+/index\\.ts$" },
    },
    {
      name: "between-outer-rooms-only-through-index",
      severity: "error",
      // The browser tests take single parts of the app into pages of their own.
      from: { path: "^([^/]+/[^/]+)/", pathNot: "^test/browser/" },
      to: { path: "^src/(?!engine/)", pathNot: ["^$1/", "^src/[^/]+/index\\.ts$"] },
    },
    {
      name: "inside-a-room-never-through-its-own-index",
      severity: "error",
      from: { path: "^(src/engine/[^/]+|src/(?!engine)[^/]+)/", pathNot: tests },
      to: { path: "^$1/index\\.ts$" },
    },
    {
      name: "nobody-imports-the-command-line-or-the-app",
      severity: "error",
      from: { pathNot: "^(src/(cli|app)|test/browser)/" },
      to: { path: "^src/(cli|app)/" },
    },
    {
      name: "what-runs-in-a-browser-has-no-node",
      severity: "error",
      from: { path: "^src/(store|app)/", pathNot: tests },
      to: { dependencyTypes: ["core"] },
    },
    {
      // It is the second opinion: formulas of its own, nothing of the solver's.
      name: "the-checker-stands-alone",
      severity: "error",
      from: { path: "^src/engine/layout/checker", pathNot: tests },
      to: {
        path: "^src/",
        pathNot: ["^src/engine/(length|cloth)/", "^src/engine/layout/(types|problems|checker)"],
      },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    { name: "no-import-that-leads-nowhere", severity: "error", from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    // TypeScript 7 has no parser that dependency-cruiser 17 can use; without this it cruises nothing and passes.
    parser: "swc",
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".mjs", ".js", ".json", ".d.ts"],
    },
  },
};
