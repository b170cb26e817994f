/**
 * Colours of saved files, the same as those of the pages on white paper (`notebooks/kit/styles/colours.css`), so that a file looks like
 * the page it came from. Green stands for scooping, straw for the temperatures of dipping, blue for the freezer.
 */
export const PALETTE = {
  ink: "#22251e",
  soft: "#575b4f",
  line: "#d6d7c5",
  strongLine: "#8b8f7e",
  accent: "#862454",
  scoops: "#dfe9c6",
  onScoops: "#45611b",
  dipping: "#f6e6ba",
  onDipping: "#6f4f0b",
  freezer: "#1d5d78",
} as const;

/** Typefaces of saved files: those of the pages where they are installed, else the nearest of the machine. */
export const FACES = {
  serif: '"Source Serif 4 Variable", "Source Serif 4", Georgia, "Liberation Serif", serif',
  sans: '"Inter Variable", Inter, system-ui, "Liberation Sans", sans-serif',
} as const;
