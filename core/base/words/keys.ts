/** Sentences for keys that cannot be given. */
export const KEY_WORDS: Readonly<Record<string, string>> = {
  "key-standing":
    "{key} keeps its meaning; take a letter, a sign or a function key, with Ctrl or Shift where you like.",
  "key-system": "{key} belongs to the browser or the system; take another key.",
  "key-bare": "{key} alone would be heard while you type; hold Ctrl with it, or take a function key.",
  "key-stays": '{key} is the key of "{other}", which keeps it; take another key.',
  "key-no-swap": '{key} is the key of "{other}", which cannot have {old} in exchange; take another key.',
  "key-twice": '{key} is the key of "{other}" too.',
};
