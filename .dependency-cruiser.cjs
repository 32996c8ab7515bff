// House import rules. Every comment is the sentence a developer reads when the rule fires.
const forbid = (name, comment, from, to) => ({ name, comment, severity: "error", from, to });
const notTypeOnly = { dependencyTypesNot: ["type-only", "type-import"] };

// The engine's floors, lowest first: a room imports only from rooms named before it in its own list.
const engineFloors = {
  units: ["math"],
  math: ["units"],
  materials: ["units", "math"],
  geometry: ["units", "math", "materials"],
  torsion: ["math"],
  laminate: ["units", "math", "materials", "torsion"],
  flex: ["units", "math", "materials", "geometry", "torsion", "laminate"],
  fit: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex"],
  snow: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex"],
  configuration: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex"],
  pricing: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex", "configuration"],
  parts: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex", "configuration"],
  calibration: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex", "configuration"],
  matching: ["units", "math"],
  schedule: ["units", "math"],
  simulate: ["units", "math", "schedule"],
  optimise: ["units", "math", "schedule", "simulate"],
  floor: ["units"],
  routing: ["units", "math", "schedule", "simulate", "optimise", "floor"],
  "floor-learning": ["units", "math", "schedule", "floor", "routing"],
  handbook: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex"],
  scene: ["units", "math", "materials", "geometry", "torsion", "laminate", "flex", "configuration"],
  assessment: [
    "units",
    "math",
    "materials",
    "geometry",
    "torsion",
    "laminate",
    "flex",
    "fit",
    "configuration",
    "pricing",
    "parts",
    "snow",
  ],
};
const engineOrder = Object.entries(engineFloors).map(([room, below]) =>
  forbid(
    `engine-order-${room}`,
    `engine/${room} stands on ${below.join(", ")}; nothing else is below it.`,
    { path: `^lib/engine/${room}/` },
    { path: "^lib/engine/", pathNot: `^lib/engine/(${[room, ...below].join("|")})/` },
  ),
);

// Reading and working out, lowest first: each room stands on the ones named before it.
const shopRooms = ["time", "catalogue", "names", "money", "order", "floor", "stock", "pair", "queue", "board"];
const shopOrder = shopRooms.map((room, index) =>
  forbid(
    `shop-order-${room}`,
    index === 0
      ? `shop/${room} is the lowest room of the shop; it reads no other.`
      : `shop/${room} stands on ${shopRooms.slice(0, index).join(", ")}; what it shares with a higher room belongs in one of them.`,
    { path: `^lib/shop/${room}/` },
    { path: "^lib/shop/[^/]+/", pathNot: `^lib/shop/(${shopRooms.slice(0, index + 1).join("|")})/` },
  ),
);

// Use cases, lowest first. A room may call what stands below it, never what stands above or beside.
const serviceRooms = [
  "settings",
  "doors",
  "people",
  "letters",
  "promises",
  "stock",
  "sheets",
  "graphics",
  "quotes",
  "orders",
  "money",
  "clubs",
  "floor",
  "planning",
  "learning",
  "desk",
  "customers",
  "papers",
];
const servicesOrder = serviceRooms.map((room, index) =>
  forbid(
    `services-order-${room}`,
    `services/${room} calls use cases of ${index === 0 ? "no other room" : serviceRooms.slice(0, index).join(", ")}; what it needs of a higher room is read in lib/shop.`,
    { path: `^lib/services/${room}/` },
    { path: "^lib/services/[^/]+/", pathNot: `^lib/services/(${serviceRooms.slice(0, index + 1).join("|")})/` },
  ),
);

module.exports = {
  forbidden: [
    ...engineOrder,
    ...shopOrder,
    ...servicesOrder,

    forbid(
      "shop-reads-only",
      "The shop's rooms read and work out: they know data, engine, catalogue and schemas, never who asks, a paper or a use case.",
      { path: "^lib/shop/" },
      { path: "^(app|lib)/", pathNot: "^lib/(shop|data|engine|catalog|schemas|config)/" },
    ),
    forbid(
      "shop-behind-services",
      "Pages ask a use case of lib/services, which asks the policy; they never read the shop's rooms themselves.",
      { path: "^app/" },
      { path: "^lib/shop/" },
    ),

    forbid(
      "no-circular",
      "A cycle hides which module is the lower one. Move the shared part down.",
      { pathNot: "^lib/data/generated/" },
      { circular: true },
    ),

    forbid("not-to-tests", "Only tests may import tests.", { pathNot: "^tests/" }, { path: "^tests/" }),

    forbid(
      "engine-is-pure",
      "The engine imports nothing but itself: no npm package, no Node module, no other layer.",
      { path: "^lib/engine/" },
      { pathNot: "^lib/engine/" },
    ),
    forbid(
      "engine-front-door",
      "Another engine module is entered through its index.ts.",
      { path: "^lib/engine/([^/]+)/" },
      { path: "^lib/engine/[^/]+/", pathNot: ["^lib/engine/$1/", "^lib/engine/[^/]+/index[.]ts$"] },
    ),

    forbid(
      "handbook-only-checks",
      "The handbook holds what the product is checked against; the product itself never reads it.",
      { path: "^(lib|app|prisma)/", pathNot: "^lib/engine/handbook/" },
      { path: "^lib/engine/handbook/" },
    ),
    forbid(
      "search-only-where-asked",
      "Plans and dates come from one simulated run of the shop; the search for a better order is for suggestions and its verb.",
      { pathNot: ["^lib/engine/(optimise|routing/suggest-order[.]ts$)", "^lib/command/", "^tests/"] },
      { path: "^lib/engine/optimise/" },
    ),

    forbid(
      "schemas-are-isomorphic",
      "Schemas run in the browser: zod and the engine only.",
      { path: "^lib/schemas/" },
      { pathNot: ["^lib/(schemas|engine)/", "(^|/)node_modules/zod/"] },
    ),

    forbid(
      "data-stays-low",
      "The data layer knows engine types and the database, and no layer above it.",
      { path: "^lib/data/" },
      { path: ["^app/", "^lib/(services|shop|auth|papers|catalog)/"] },
    ),
    forbid(
      "prisma-only-in-data",
      "Prisma and the drivers are imported in lib/data and prisma/ only.",
      { pathNot: ["^lib/data/", "^prisma/", "^tests/support/"] },
      { path: ["(^|/)node_modules/(@prisma|prisma|@electric-sql|pglite-prisma-adapter|pg)/", "^lib/data/generated/"] },
    ),

    forbid(
      "zones-in-one-place",
      "Time zones are asked in lib/shop/time/zone.ts only; the rest counts days and minutes of the shop's clock.",
      { pathNot: "^lib/shop/time/zone[.]ts$" },
      { path: "(^|/)node_modules/(temporal-polyfill|temporal-spec|temporal-utils)/" },
    ),

    forbid(
      "numbers-on-the-server",
      "Telephone numbers are read in lib/shop/names/phone.ts only: the tables of numbering plans have no place in a browser.",
      { pathNot: "^lib/shop/names/phone[.]ts$" },
      { path: "(^|/)node_modules/libphonenumber-js/" },
    ),

    forbid(
      "one-log",
      "The log is written through lib/log.ts, which leaves out what is about a person.",
      { pathNot: "^lib/log[.]ts$" },
      { path: "(^|/)node_modules/pino/" },
    ),

    forbid(
      "papers-are-pure-output",
      "A paper turns facts into bytes; it never fetches.",
      { path: "^lib/papers/" },
      { path: ["^app/", "^lib/(services|shop|auth|data|catalog)/"] },
    ),
    forbid(
      "papers-parts-are-low",
      "What papers share knows none of them.",
      { path: "^lib/papers/parts/" },
      { path: "^lib/papers/", pathNot: "^lib/papers/parts/" },
    ),
    forbid(
      "papers-do-not-draw-others",
      "A paper borrows another's rows and types, never its page.",
      { path: "^lib/papers/([^/]+)/" },
      { path: "^lib/papers/[^/]+/page[.]tsx$", pathNot: "^lib/papers/$1/" },
    ),

    forbid(
      "catalog-stays-low",
      "The catalogue reads content and validates it; it knows no database and no use case.",
      { path: "^lib/catalog/" },
      { path: ["^app/", "^lib/(services|shop|auth|papers|data)/"] },
    ),
    forbid(
      "auth-stays-low",
      "Sessions and policy know the data layer, not the use cases they guard.",
      { path: "^lib/auth/" },
      { path: ["^app/", "^lib/(services|shop|papers|catalog)/"] },
    ),
    forbid(
      "services-below-app",
      "Services never reach up into routes or sideways into the framework.",
      { path: "^lib/" },
      { path: ["^app/", "(^|/)node_modules/next/"] },
    ),

    forbid(
      "command-is-a-door",
      "The command line parses, calls the engine or a service, and prints; nobody imports it but its own entry.",
      { pathNot: ["^lib/command/", "^tests/", "^[.]ci/"] },
      { path: "^lib/command/" },
    ),
    forbid(
      "command-below-app",
      "The command line uses engine, schemas, catalog, services and papers; it holds no database of its own.",
      { path: "^lib/command/" },
      { path: ["^app/", "^lib/data/"] },
    ),

    forbid(
      "one-catalogue",
      "The catalogue is read through its loader, which checks it; pages ask settings() of #services.",
      { path: "^(app|lib)/", pathNot: "^lib/catalog/" },
      { path: "^content/catalog/" },
    ),
    forbid(
      "app-through-services",
      "Routes go through lib/services; they never touch data or papers.",
      { path: "^app/" },
      { path: "^lib/(data|papers)/" },
    ),
    forbid(
      "client-code-is-light",
      "Client components use the engine, schemas, shared UI and server actions; anything else as types only.",
      { path: "[.]client[.]tsx$" },
      {
        path: ["^lib/", "^app/"],
        pathNot: [
          "^lib/(engine/|schemas/|services/views[.]ts)",
          "^app/_(ui|visuals)/",
          "[.]client[.]tsx$",
          "/(actions|words)[.]ts$",
        ],
        ...notTypeOnly,
      },
    ),
    forbid(
      "ui-is-dumb",
      "Shared UI draws what it is given.",
      { path: "^app/_(ui|visuals)/" },
      {
        path: ["^lib/", "^app/"],
        pathNot: ["^lib/(engine/|services/views[.]ts)", "^app/_(ui|visuals)/"],
        ...notTypeOnly,
      },
    ),
    // The capture leaves out the brackets of a route group: "(skier)" inserted by $1 would be read as a regex group.
    forbid(
      "no-route-to-route",
      "Route areas do not import each other; share through app/_ui or lib.",
      { path: "^app/[(]?([^_/()]+)[)]?/" },
      { path: "^app/[^_/][^/]*/", pathNot: "^app/[(]?$1[)]?/" },
    ),
    forbid(
      "e2e-is-black-box",
      "End-to-end tests drive the browser; they import support code only.",
      { path: "^tests/e2e/" },
      { path: ["^lib/", "^app/"] },
    ),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)[.]next/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: { extensions: [".ts", ".tsx", ".js", ".cjs", ".mjs"] },
  },
};
