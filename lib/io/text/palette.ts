/**
 * Colours of what is written to a file, as the pages have them on white paper (`notebooks/kit/styles/colours.css`): a file that was saved
 * looks like the page it came from. Green is what scoops, straw the temperatures of dipping, blue the freezer.
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

/** Faces of what is written to a file: those of the pages where they are installed, else the nearest of the machine. */
export const FACES = {
  serif: '"Source Serif 4 Variable", "Source Serif 4", Georgia, "Liberation Serif", serif',
  sans: '"Inter Variable", Inter, system-ui, "Liberation Sans", sans-serif',
} as const;
