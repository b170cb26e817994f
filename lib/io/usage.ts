/** What the command says of itself. */
export const USAGE = `Usage: mixwright balance BRIEF [options]
       mixwright replace RECIPE --without NAME [options]
       mixwright sheet RECIPE [options]

balance   finds the ingredient quantities that meet a brief's targets at the least cost
replace   remakes a recipe without an ingredient so that the eater notices least
sheet     prints the batch sheet of a recipe

A BRIEF is a JSON file; a RECIPE is a CSV file with the columns ingredient and g, or JSON. - reads standard input.

  --json            print the answer as one JSON object
  --own FILE        ingredients of your own, CSV or JSON, beside those of this package; the same name replaces one
  --pantry FILE     nothing but these ingredients instead of those of this package (a brief can name its own)
  --prices FILE     prices and stock, CSV; of ingredients that a brief or a recipe describes too; others are passed over
balance
  --explain         what each limit costs and over which range, and from which price an ingredient comes in
  --candidates      the other mixes in full
  --weighable       amounts for the scale, eggs whole, with every target kept if that is possible
  --scale GRAMS     step of the scale for --weighable; 1 unless given
  --reliability     how often each target holds when the kitchen is off by the brief's "spread"
  --recipe FILE     write the amounts as a recipe, CSV; JSON if the name ends so, with ingredients of your own
  --csv, --markdown, --html FILE   write the answer, with --weighable the amounts for the scale first
  --svg FILE        write the freezing curve as a picture
replace
  --left GRAMS      what is left of it
  --keep NAME       an ingredient that stays as it is; can be given again
  --recipe FILE     write the best one as a recipe, CSV; JSON if the name ends so
sheet
  --grams GRAMS     how much to make; what the recipe says unless given
  --overrun PERCENT air in the frozen mix
  --way NAME        how the base is made: custard (unless given), scald, pot or cold
  --csv, --markdown, --html FILE   write the sheet; Markdown on the screen unless given

mixwright --version prints the version. What was written to a file, or passed over, is said on the error stream.
Exit code: 0 done, 1 no mix meets the brief (the report says why) or nothing can stand in, 2 a mistake in the input.
`;

const text = {type: "string"} as const;
const flag = {type: "boolean"} as const;

/** What every command takes. */
const COMMON = {
  json: flag,
  pantry: text,
  own: text,
  prices: text,
  help: {type: "boolean", short: "h"},
  version: flag,
} as const;

/** What a command takes besides, as `parseArgs` of Node has it. */
export const OPTIONS_OF = {
  balance: {
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
  replace: {without: text, left: text, keep: {type: "string", multiple: true}, recipe: text},
  sheet: {grams: text, overrun: text, way: text, csv: text, markdown: text, html: text},
} as const;

/** The options of all commands together. */
export const OPTIONS = {
  ...COMMON,
  ...OPTIONS_OF.balance,
  ...OPTIONS_OF.replace,
  ...OPTIONS_OF.sheet,
} as const;
