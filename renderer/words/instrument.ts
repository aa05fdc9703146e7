import { BENCH_INSTRUMENTS } from "../../core/base/words/instruments.ts";
import { sentence } from "../../core/base/words.ts";
import { ohmsText } from "../../core/diagnose/figureText.ts";
import type { Clipped } from "../../core/live/instruments/clipped.ts";
import type { Showing } from "../../core/live/instruments/showing.ts";
import { CLAMP_FROM, OPEN_FROM } from "../../core/trade/instruments.ts";
import { ampsText, signed, voltsText } from "./figures.ts";

/** What an instrument shows in as few signs as a tag on the drawing has room for; empty where it shows nothing. */
export function shownFigure(showing: Showing): string {
  switch (showing.shows) {
    case "free":
    case "nothing":
      return "";
    case "volts":
      return showing.range
        ? `${signed(showing.range[0], 1)} to ${voltsText(showing.range[1], 1)}`
        : voltsText(showing.volts);
    case "undecided":
      return "undecided";
    case "lamp":
      return showing.light;
    case "jumper":
      return showing.melted ? "fuse melted" : ampsText(Math.abs(showing.amps));
    case "amps":
      return ampsText(showing.amps).replace("-", "−");
    case "ohms":
      return ohmsText(showing.ohms ?? OPEN_FROM).replace(/ (k?)ohm$/, "\u00A0$1Ω");
  }
}

/** What is to be known beside the figure: what a floating lead does to it, what flows, why nothing is shown. */
export function besideFigure(showing: Showing): string {
  switch (showing.shows) {
    case "free":
      return "Clip its leads on to read it.";
    case "nothing":
      return sentence(showing.refusal);
    case "volts":
      if (showing.range) return NOT_SETTLED;
      return showing.drifts ? "A lead floats: any figure from 0 to 0.3 V may stand there, as on a ground." : "";
    case "undecided":
      return NOT_SETTLED;
    case "lamp":
      return `${voltsText(Math.abs(showing.volts))} across it, ${ampsText(Math.abs(showing.amps))}.`;
    case "jumper":
      return showing.melted ? "More flowed than its fuse carries: nothing passes now." : "";
    case "amps":
      return Math.abs(showing.amps) >= LEAST_AMPS && Math.abs(showing.amps) < CLAMP_FROM
        ? `A real clamp tells little below ${CLAMP_FROM} A.`
        : "";
    case "ohms":
      return "";
  }
}

const NOT_SETTLED = "Not settled: a relay chatters, or a module output that is not set decides it.";
/** Less than this is shown as no current. */
const LEAST_AMPS = 0.001;

/** What an instrument is called on the bench: with its number where several lie there. */
export function instrumentTitle({ instrument, id }: Clipped, count: number): string {
  return `${BENCH_INSTRUMENTS[instrument]}${count > 1 ? ` ${id}` : ""}`;
}
