/**
 * Heights of words for a class, px on a screen of so many lines, and the step from one to the next. The least is what a
 * slide's text of 24 points comes to; it can be read from six heights of the picture away.
 */
export const CLASS_WORDS = { least: 48, most: 96, step: 8, lines: 1080 } as const;
