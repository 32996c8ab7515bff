/** Everybody of the demo, invented. Numbers from the range that is reserved for fiction (555-0100 to 0199). */
export interface DemoStaff {
  readonly name: string;
  readonly email: string;
  readonly role: "desk" | "maker" | "owner";
  readonly password: string;
}

/** Who may sign in to the demo shop. For a demo on one's own machine only: change them before anyone else can reach it. */
export const demoStaff: readonly DemoStaff[] = [
  { name: "Ines Calder", email: "desk@thistle-yard.example", role: "desk", password: "larch-desk-demo" },
  { name: "Joss Penhale", email: "desk2@thistle-yard.example", role: "desk", password: "larch-desk-demo" },
  { name: "Mo Tarrant", email: "maker@thistle-yard.example", role: "maker", password: "larch-maker-demo" },
  { name: "Ola Brandreth", email: "owner@thistle-yard.example", role: "owner", password: "larch-owner-demo" },
];

const givenNames = [
  "Robin",
  "Wren",
  "Alda",
  "Bram",
  "Cora",
  "Dov",
  "Edda",
  "Finn",
  "Greta",
  "Hale",
  "Isa",
  "Jory",
  "Kit",
  "Lena",
  "Milo",
  "Nora",
  "Oren",
  "Pia",
  "Quill",
  "Rhea",
  "Sten",
  "Tess",
  "Ulf",
  "Vera",
  "Wim",
  "Xanthe",
  "Yara",
  "Zeno",
  "Anouk",
  "Bodo",
];
const familyNames = [
  "Alder",
  "Sorrel",
  "Bracken",
  "Corrie",
  "Dunmore",
  "Easdale",
  "Farrow",
  "Gorse",
  "Heath",
  "Inver",
  "Juniper",
  "Kestle",
  "Ling",
  "Marram",
  "Nettle",
  "Osier",
  "Pike",
  "Quarrie",
  "Rowan",
  "Sedge",
  "Tarn",
  "Umber",
  "Vetch",
  "Withy",
  "Yarrow",
];

export interface DemoPerson {
  readonly name: string;
  readonly phone: string;
  readonly email: string;
}

/** The n-th customer of the demo, from 0 to 99: always the same. */
export function demoPerson(index: number): DemoPerson {
  const given = givenNames[index % givenNames.length] ?? "Robin";
  const family = familyNames[(index * 7 + 3) % familyNames.length] ?? "Alder";
  return {
    name: `${given} ${family}`,
    phone: `303 555 0${100 + index}`,
    email: `${given}.${family}${index}@mail.example`.toLowerCase(),
  };
}
