/** What the command says of itself. */
export const USAGE = `Usage: mixwright balance BRIEF [options]
       mixwright replace RECIPE --without NAME [options]
       mixwright sheet RECIPE [options]

balance   finds the ingredient quantities that meet a brief's targets at the least cost
replace   remakes a recipe without an ingredient so that the eater notices least
sheet     prints the batch sheet of a recipe

A BRIEF is a JSON file; a RECIPE is a CSV file with the columns ingredient and g, or JSON. - reads standard input.

  --json            print the answer as one JSON object
  --pantry FILE     ingredients, CSV or JSON; those of this package unless given (a brief can name its own)
  --prices FILE     prices and stock, CSV
balance
  --explain         what each limit costs and over which range, and from which price an ingredient comes in
  --candidates      the other mixes in full
  --weighable       amounts for the scale, eggs whole, with every target kept if that is possible
  --scale GRAMS     step of the scale for --weighable; 1 unless given
  --reliability     how often each target holds when the kitchen is off by the brief's "spread"
  --recipe FILE     write the amounts as a recipe, CSV; JSON if the name ends so, with ingredients of your own
  --csv, --markdown, --html FILE   write the answer
  --svg FILE        write the freezing curve as a picture
replace
  --left GRAMS      what is left of it
  --keep NAME       an ingredient that stays as it is; can be given again
sheet
  --grams GRAMS     how much to make; what the recipe says unless given
  --overrun PERCENT air in the frozen mix
  --way NAME        how the base is made: custard (unless given), scald, pot or cold
  --csv, --markdown, --html FILE   write the sheet; Markdown on the screen unless given

Exit code: 0 done, 1 no mix meets the brief (the report says why), 2 a mistake in the input.
`;

const text = {type: "string"} as const;
const flag = {type: "boolean"} as const;
/** The options of the command, as `parseArgs` of Node takes them. */
export const OPTIONS = {
  json: flag,
  pantry: text,
  prices: text,
  csv: text,
  markdown: text,
  html: text,
  explain: flag,
  candidates: flag,
  weighable: flag,
  scale: text,
  reliability: flag,
  recipe: text,
  svg: text,
  without: text,
  left: text,
  keep: {type: "string", multiple: true},
  grams: text,
  overrun: text,
  way: text,
  help: {type: "boolean", short: "h"},
} as const;
