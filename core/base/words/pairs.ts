/** Two faults with one cause, named by it. */
export const PAIR_WORDS = {
  corrosion: (plug: string, one: string, other: string) => `corrosion in ${plug}: pins ${one} and ${other}`,
  splice: (splice: string, one: string, other: string) => `splice ${splice} open to legs ${one} and ${other}`,
  ground: (ground: string, one: string, other: string) => `ground ${ground}: rings of ${one} and ${other} loose`,
  explains: (pair: string) => `One cause would explain all of them: ${pair}.`,
} as const;
