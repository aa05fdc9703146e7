/** Sentences about colours, gauges and other values of the trade. */
export const TRADE_WORDS: Readonly<Record<string, string>> = {
  "colour-empty": "The wire colour is empty.",
  "colour-unknown": "{piece} in {text} is no colour of the code {set}.",
  "colour-ambiguous": "{text} could be {readings}; part the two colours with a stroke.",
  "colour-too-many": "{text} has {stripes} stripes; a wire has two at most.",
  "colour-stripe-is-base": "{text} has a stripe of its own base colour.",
  "colour-not-in-set": "The code {set} has no letters for {colour}.",
  "gauge-unknown": "{text} is no wire gauge.",
  "gauge-not-in-table": "The table has no gauge {gauge}.",
  "no-gauge-thick-enough": "No gauge of the table has {circularMils} circular mils.",
  "engine-space-factor-unknown": "No factor for an engine space is published for {insulation} degC insulation.",
};
