/** Commands by their name: how each is called, what it does, and its options. */
const COMMANDS = {
  balance: {
    usage: "mixwright balance BRIEF [options]",
    does: "finds the ingredient quantities that meet a brief's targets at the least cost",
    options: `  --deadline SECONDS   the longest it may take, 10 unless given; over it the best mix so far is shown
  --explain         what each limit costs and where that holds; from which price an ingredient comes in
  --candidates      the other mixes in full
  --weighable       amounts for the scale, eggs whole, with every target kept if that is possible
  --scale GRAMS     step of the scale for --weighable; 1 unless given
  --reliability     how often each target holds when the kitchen is off by the brief's "spread"
  --recipe FILE     write the recipe, CSV; JSON if the name ends so, with ingredients of your own
  --csv, --markdown, --html FILE   write the answer, with --weighable the amounts for the scale first
  --svg FILE        write the freezing curve as a picture`,
  },
  read: {
    usage: "mixwright read RECIPE [options]",
    does: "tells what a recipe is like, and how to make it softer, cheaper or less sweet",
    options: `  --freezer CELSIUS temperature that it is served from, -18 unless given
  --overrun PERCENT air in the frozen mix; what the recipe says, or else 30
  --lock NAME       an ingredient that stays as it is; can be given again
  --deadline SECONDS   the longest the changes may take, 10 unless given
  --take CHANGE     softer, firmer, cheaper or "less sweet": the change that goes into --recipe
  --recipe FILE     write the recipe with that change, CSV; JSON if the name ends so`,
  },
  replace: {
    usage: "mixwright replace RECIPE --without NAME [options]",
    does: "remakes a recipe without an ingredient so that the eater notices least",
    options: `  --without NAME    what is out; given again, that is out too, or not offered if the recipe lacks it
  --deadline SECONDS   the longest it may take, 10 unless given; over it the ways found so far are shown
  --left GRAMS      what is left of it
  --keep NAME       an ingredient that stays as it is; can be given again
  --recipe FILE     write the best one as a recipe, CSV; JSON if the name ends so`,
  },
  sheet: {
    usage: "mixwright sheet RECIPE [options]",
    does: "prints the batch sheet of a recipe",
    options: `  --grams GRAMS     how much to make; what the recipe says unless given
  --overrun PERCENT air in the frozen mix
  --way NAME        how the base is made: custard (unless given), scald, pot or cold
  --heated NAME     heated with the rest (raw fruit, flavourings, spirits and yoghurt or other
                    sour milk are not); can be given again
  --late NAME       goes in after cooling; can be given again
  --csv, --markdown, --html FILE   write the sheet; Markdown on the screen unless given
  --sticker 90x60   a sticker for the tub instead, of that size in mm; on the screen, or with
                    --html FILE to print, --svg FILE as a picture; with it:
    --net 500ml     what is in the tub, in ml, l, g or kg
    --made 2026-07-01, --until 2027-01-31, --lot TEXT   day of making, best before, batch
    --maker TEXT, --storage TEXT   name and address; how to store it
    --law EU        or GB, or US: whose law; EU unless given
    --promise NAME  what the name promises gets its percentage; can be given again
    --print NAME=PRINTED   what to call an ingredient; can be given again
    --nutrition     with the nutrition declaration
    --portion GRAMS and of a portion
    --small         smaller letters, for packs whose largest side is below 80 cm²
  --panel FILE      write the nutrition panel of --law as a page`,
  },
} as const;

const FILES = {
  balance: "A BRIEF is a JSON file; - reads standard input.",
  replace:
    "A RECIPE is a text as a cook writes it, one ingredient a line (500 ml milk, 3 large eggs, sugar 150 g), a CSV\nfile with the columns ingredient and g (recipe names it), or JSON. - reads standard input.",
};

const EVERYWHERE = `  --json            print the answer as one JSON object
  --own FILE        your own ingredients, CSV or JSON; one with a listed name replaces it
  --pantry FILE     only these ingredients instead of those included (a brief can describe its own)
  --prices FILE     prices and stock, CSV; unknown names are ignored
  --learned FILE    your reports on batches, JSON, that teach when your tubs scoop: a list of
                    {"recipe": FILE, "freezer": -18, "found": "too hard", "right" or "too soft"}`;

const FOOT = `mixwright --version prints the version. What was written to a file, or ignored, is said on the error stream.
Exit code: 0 done; 1 no mix meets the brief (the report says why), time ran out, nothing can stand in or
there is no such change; 2 a mistake in the input.
`;

/** Help text of one of the commands where that is named, else of all. */
export function usage(name = ""): string {
  if (Object.hasOwn(COMMANDS, name)) {
    const {usage, does, options} = COMMANDS[name as keyof typeof COMMANDS];
    const file = FILES[name === "balance" ? "balance" : "replace"];
    return `Usage: ${usage}\n\n${name} ${does}.\n\n${file}\n\n${options}\n${EVERYWHERE}\n\n${FOOT}`;
  }
  const each = Object.entries(COMMANDS);
  return [
    `Usage: ${each.map(([, {usage}]) => usage).join("\n       ")}`,
    each.map(([name, {does}]) => `${name.padEnd(9)} ${does}`).join("\n"),
    Object.values(FILES).join("\n"),
    [EVERYWHERE, ...each.map(([name, {options}]) => `${name}\n${options}`)].join("\n"),
    `mixwright COMMAND --help prints the options of one command.\n${FOOT}`,
  ].join("\n\n");
}

const text = {type: "string"} as const;
const flag = {type: "boolean"} as const;

/** Options of every command. */
const COMMON = {
  json: flag,
  pantry: text,
  own: text,
  prices: text,
  learned: text,
  help: {type: "boolean", short: "h"},
  version: flag,
} as const;

/** Further options of each command, as `parseArgs` of Node has them. */
export const OPTIONS_OF = {
  balance: {
    deadline: text,
    explain: flag,
    candidates: flag,
    weighable: flag,
    scale: text,
    reliability: flag,
    recipe: text,
    csv: text,
    markdown: text,
    html: text,
    svg: text,
  },
  read: {
    deadline: text,
    freezer: text,
    overrun: text,
    lock: {type: "string", multiple: true},
    take: text,
    recipe: text,
  },
  replace: {
    deadline: text,
    without: {type: "string", multiple: true},
    left: text,
    keep: {type: "string", multiple: true},
    recipe: text,
  },
  sheet: {
    grams: text,
    overrun: text,
    way: text,
    heated: {type: "string", multiple: true},
    late: {type: "string", multiple: true},
    csv: text,
    markdown: text,
    html: text,
    svg: text,
    sticker: text,
    net: text,
    made: text,
    until: text,
    lot: text,
    maker: text,
    storage: text,
    law: text,
    promise: {type: "string", multiple: true},
    print: {type: "string", multiple: true},
    nutrition: flag,
    portion: text,
    small: flag,
    panel: text,
  },
} as const;

/** The options of all commands together. */
export const OPTIONS = {
  ...COMMON,
  ...OPTIONS_OF.balance,
  ...OPTIONS_OF.read,
  ...OPTIONS_OF.replace,
  ...OPTIONS_OF.sheet,
} as const;
